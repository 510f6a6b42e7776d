interface PanelHeadProps {
  readonly title: string;
  readonly onBack: () => void;
}

/** The title of what lies over a view, and the way back. */
export function PanelHead({ title, onBack }: PanelHeadProps) {
  return (
    <header class="crew-panel-head">
      <button type="button" class="crew-key" onClick={onBack}>
        Back
      </button>
      <h2>{title}</h2>
    </header>
  );
}
