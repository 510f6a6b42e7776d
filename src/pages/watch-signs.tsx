import type { UnitSystem } from "../../shared/units.ts";
import { signWords } from "../../shared/words/watch.ts";

type Kind = ReturnType<typeof signWords>[number]["kind"];

/** What to look for, drawn, and what to do. */
export function WatchSigns({ system }: { readonly system: UnitSystem }) {
  return (
    <ul class="watch-signs">
      {signWords(system).map(({ kind, title, act, strong }) => (
        <li key={kind}>
          <SignDrawing kind={kind} />
          <div>
            <h4>{title}</h4>
            <p>
              {strong && <strong>{strong} </strong>}
              {act}
            </p>
          </div>
        </li>
      ))}
    </ul>
  );
}

/** The levee cut across with water on its left, and the sign on it. */
function SignDrawing({ kind }: { readonly kind: Kind }) {
  const waterY = kind === "top" ? 7.4 : 8.6;
  return (
    <svg class="watch-sign" viewBox="0 0 42 20" aria-hidden="true">
      <rect class="sign-ground" x="0" y="15.4" width="42" height="4.6" />
      <path class="sign-water" d={`M0 ${waterY}H${19.6 - waterY}L5 15.4H0Z`} />
      <path class="sign-surface" d={`M0 ${waterY}H${19.6 - waterY}`} />
      {kind === "crack" ? (
        <>
          <path class="sign-levee" d="M5 15.4L15 5h3l-.6 10.4Z" />
          <path class="sign-levee" d="M18.6 15.4l.9-8.6 8.4 8.6Z" />
          <path class="sign-arrow" d="M25 5.5c4 1 6 4 7 7m-2.6-1.6l2.6 1.8 1.2-2.8" />
        </>
      ) : (
        <>
          <path class="sign-levee" d="M5 15.4L15 5h3l10 10.4Z" />
          <path class="sign-course" d="M7.6 12.8h17.8M10 10.2h13M12.6 7.6h8" />
        </>
      )}
      {kind === "sheet" ? (
        <path class="sign-poly" d="M0 15.2h4.6l4.6-4.8M12.6 3c-3-2-5 2-2.6 3s-2 4-4 2" />
      ) : (
        <path class="sign-poly" d="M0 15.2h4.6L14.8 4.6h4l1.4 1.6" />
      )}
      {kind === "boil" && (
        <path
          class="sign-seep"
          d="M8 17.6h22q3.6 0 4-2.6v-3m-2 -1.2q2-3 4 0m-5.6 1q-1.6-3-3.2 .8m8.8-.8q1.6-3 3.2 .8"
        />
      )}
      {kind === "boil" && <path class="sign-poly" d="M30.4 15.4l2-2.4h3.4l2 2.4" />}
      {kind === "toe" && (
        <path class="sign-seep" d="M10 12.6q8 0 14 2.2m0 0q6 1.4 14 .4M30 17.4h2m3 .6h2" />
      )}
      {kind === "top" && (
        <path
          class="sign-arrow"
          d="M2.6 .8v3.6m-1-1.2l1 1.2 1-1.2M2.6 12V8m-1 1.2l1-1.2 1 1.2M0 4.9h15"
        />
      )}
    </svg>
  );
}
