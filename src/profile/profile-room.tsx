import { failureText } from "../../shared/words/failure.ts";
import { unitSystem } from "../live/screen.ts";
import "./profile-room.css";
import { plan } from "../document/store.ts";
import { chosenLine, sizingFailure } from "../live/results.ts";
import "../drawing/profile/profile.css";
import { PROFILE_TITLE } from "./profile-head.tsx";
import { ProfileView } from "./profile-view.tsx";

/** The chosen alternative drawn along its length, with the marked station that map and section share. */
export function ProfileRoom() {
  const line = chosenLine.value;
  const isDrawable = line !== null && line.walk.chainageM.length > 1;
  return (
    <div class="room profile-room">
      {isDrawable ? <ProfileView key={line.id} line={line} /> : <Empty />}
    </div>
  );
}

function Empty() {
  const failure = sizingFailure.value;
  const hasLine = plan.value.alignments.length > 0;
  const words =
    failure && hasLine
      ? failureText(failure, unitSystem.value)
      : hasLine
        ? "The line is being measured."
        : "Ground, water and top of levee from station to station.";
  return (
    <>
      <header class="room-head">
        <h2>{PROFILE_TITLE}</h2>
      </header>
      <p class="room-empty">{words}</p>
    </>
  );
}
