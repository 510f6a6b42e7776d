import type { ComponentChildren } from "preact";
import { type Tool, tool } from "../live/screen.ts";
import { Icon, type IconName } from "../ui/icons.tsx";

interface ToolButtonProps {
  readonly tool: Tool;
  readonly icon: IconName;
  readonly disabled?: boolean;
  readonly children: ComponentChildren;
}

/** Takes a drawing tool in hand; pressed again, puts it back. */
export function ToolButton({ tool: own, icon, disabled, children }: ToolButtonProps) {
  const held = tool.value === own;
  return (
    <button
      type="button"
      class="tool-button"
      aria-pressed={held}
      disabled={disabled}
      onClick={() => {
        tool.value = held ? "move" : own;
      }}
    >
      <Icon name={icon} /> {children}
    </button>
  );
}
