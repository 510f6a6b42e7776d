import { signal } from "@preact/signals";
import { useEffect, useRef, useState } from "preact/hooks";
import { recall, remember } from "../browser/remember.ts";
import { SplitEdge } from "../ui/split-edge.tsx";

const KEY = "drystead.layout.profile";
const kept = Number.parseFloat(recall(KEY, ""));
const chosen = signal<number | null>(kept > 0 && kept < 1 ? kept : null);

/** Share of the height under the bar that the person has given profile and cross-section; null as at first. */
export function profileShareStyle(): Record<string, string> {
  return chosen.value === null ? {} : { "--profile-share": String(chosen.value) };
}

/** The edge between the map and the profile under it; kept on this machine. */
export function ProfileEdge() {
  const place = useRef<HTMLDivElement>(null);
  const [atFirst, setAtFirst] = useState(0.3);
  useEffect(() => {
    const shell = place.current?.closest(".shell");
    if (!shell || chosen.value !== null) return;
    setAtFirst(Number.parseFloat(getComputedStyle(shell).getPropertyValue("--profile-share")));
  }, [chosen.value]);
  const extent = () => {
    const shell = place.current?.closest(".shell");
    const map = shell?.querySelector(".map-place")?.getBoundingClientRect();
    return shell && map ? { top: map.top, bottom: shell.getBoundingClientRect().bottom } : null;
  };
  return (
    <div class="profile-edge" ref={place}>
      <SplitEdge
        label="Edge between map and profile"
        share={chosen.value ?? atFirst}
        extent={extent}
        onShare={(next) => {
          chosen.value = next;
          remember(KEY, next === null ? "" : next.toFixed(3));
        }}
      />
    </div>
  );
}
