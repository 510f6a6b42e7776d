import { formatStation } from "../../shared/units.ts";
import {
  GPS_OFF,
  GPS_WAITING,
  gpsTroubleWords,
  placeWords,
  toStakeWords,
} from "../../shared/words/field-place.ts";
import { unitSystem } from "../live/screen.ts";
import { type AtStake, goToStake } from "./at.ts";
import { gps, isFollowing, leaveGps, placeNow, startGps } from "./gps.ts";

/** Where the person is along the line, by GPS, and how far that is to be trusted. */
export function PlaceLine({ at }: { readonly at: AtStake }) {
  const system = unitSystem.value;
  const now = gps.value;
  const place = placeNow.value;
  const isHere = place !== null && place.stake === at.index;
  return (
    <section class="crew-place" aria-label="Where you are">
      {place && <strong>{toStakeWords(place, at.staked, at.station.chainageM, system)}</strong>}
      <p role="status">{place ? placeWords(place, system) : whyNone(now.kind)}</p>
      {(now.kind === "off" || now.kind === "refused") && (
        <button type="button" class="crew-key" onClick={startGps}>
          Use GPS
        </button>
      )}
      {place && !isHere && (
        <button
          type="button"
          class="crew-key"
          onClick={() => {
            isFollowing.value = true;
            goToStake(at, place.stake);
          }}
        >
          To my stake, {formatStation(at.staked.stakes[place.stake]!.chainageM, system)}
        </button>
      )}
      {place && isHere && (
        <button type="button" class="crew-key" onClick={leaveGps}>
          GPS off
        </button>
      )}
    </section>
  );
}

function whyNone(kind: (typeof gps.value)["kind"]): string {
  if (kind === "off") return GPS_OFF;
  return kind === "waiting" || kind === "fix" ? GPS_WAITING : gpsTroubleWords(kind);
}
