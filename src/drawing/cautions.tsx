/** The cautions that stand on every plan, on the screen and on paper. Sources beside each. */
export const CAUTIONS: readonly { readonly text: string; readonly source: string }[] = [
  {
    text: "Lift with the legs and pass bags hand to hand; never throw or twist. Gloves and goggles.",
    source: "NDSU-11, MB",
  },
  {
    text: "Flood water and wet bags are contaminated: wash, and do not use wet bags again.",
    source: "QLD, NDSU-11",
  },
  {
    text: "Electric pumps on ground-fault-protected circuits, out of the wet.",
    source: "NDSU-11, LSU",
  },
  {
    text: "Patrol in pairs. At night with lights and life jackets, in sight of each other.",
    source: "DWR-03, FFO-96",
  },
  {
    text: "Never stop a boil: ring it with bags and let it run until it runs clear.",
    source: "DWR-03, LOM",
  },
  {
    text: "Never build against a basement wall, and do not pump a basement out early.",
    source: "NDSU-11, BASE-N, BASE-F",
  },
  { text: "Decide now at which stage people leave.", source: "FFO-96" },
];

/** What the plan is not. */
export const DISCLAIMER =
  "Figures by Drystead from the ground and the forecast given. A sandbag ring is temporary. This is not a permit: local codes and licensed engineers decide.";

/** The standing cautions, short, at the end of the checks. */
export function Cautions() {
  return (
    <section class="cautions" aria-label="Standing cautions">
      <h3>Always</h3>
      <ul>
        {CAUTIONS.map((caution) => (
          <li key={caution.text}>
            {caution.text} <small>{caution.source}</small>
          </li>
        ))}
      </ul>
      <p>{DISCLAIMER}</p>
    </section>
  );
}
