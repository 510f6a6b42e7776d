/** Quiet textures of loose fill, over the colour of its height. Ids are `{id}-sand` and `{id}-earth`. */
export function Textures({ id }: { readonly id: string }) {
  return (
    <defs>
      <pattern id={`${id}-sand`} width="9" height="9" patternUnits="userSpaceOnUse">
        <g class="texture-sand">
          <circle cx="1.5" cy="2" r="0.75" />
          <circle cx="6" cy="1" r="0.55" />
          <circle cx="4" cy="5" r="0.7" />
          <circle cx="8" cy="6.5" r="0.75" />
          <circle cx="1.8" cy="7.8" r="0.55" />
        </g>
      </pattern>
      <pattern id={`${id}-earth`} width="16" height="12" patternUnits="userSpaceOnUse">
        <path class="texture-earth" d="M1 3h5M10 3.6h4M4 9h6M13 9.4h2.4M0 9.4h1" />
      </pattern>
    </defs>
  );
}
