import { Icon, type IconName } from "./icons.tsx";

interface IconButtonProps {
  readonly icon: IconName;
  /** Its name for screen readers, and the tip shown when it is pointed at or focused. */
  readonly label: string;
  readonly disabled?: boolean;
  readonly keys?: string;
  readonly onPress: () => void;
}

/** A small square button with an icon and a tip. */
export function IconButton({ icon, label, disabled, keys, onPress }: IconButtonProps) {
  return (
    <button
      type="button"
      class="icon-button"
      aria-label={label}
      aria-keyshortcuts={keys}
      data-tip={label}
      disabled={disabled}
      onClick={onPress}
    >
      <Icon name={icon} />
    </button>
  );
}
