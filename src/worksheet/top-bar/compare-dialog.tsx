import { Dialog } from "../../ui/dialog.tsx";
import { RowBody } from "../row-body.tsx";

interface CompareDialogProps {
  readonly open: boolean;
  readonly onClose: () => void;
}

/** All alternatives side by side. */
export function CompareDialog({ open, onClose }: CompareDialogProps) {
  return (
    <Dialog title="Lines side by side" open={open} onClose={onClose}>
      {open && <RowBody of="CompareBody" />}
    </Dialog>
  );
}
