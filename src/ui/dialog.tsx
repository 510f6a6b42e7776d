import type { ComponentChildren } from "preact";
import { useEffect, useId, useRef } from "preact/hooks";
import { Icon } from "./icons.tsx";

interface DialogProps {
  readonly title: string;
  readonly open: boolean;
  readonly onClose: () => void;
  readonly children: ComponentChildren;
}

/** A modal window over the working screen; Escape or its close button ends it, and focus goes back. */
export function Dialog({ title, open, onClose, children }: DialogProps) {
  const titleId = useId();
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    const element = dialog.current;
    if (!element) return;
    if (open && !element.open) element.showModal();
    if (!open && element.open) element.close();
  }, [open]);
  return (
    <dialog ref={dialog} class="dialog" aria-labelledby={titleId} onClose={onClose}>
      {open && (
        <>
          <div class="dialog-head">
            <h2 id={titleId}>{title}</h2>
            <button type="button" class="icon-button" aria-label="Close" onClick={onClose}>
              <Icon name="close" />
            </button>
          </div>
          <div class="dialog-body">{children}</div>
        </>
      )}
    </dialog>
  );
}
