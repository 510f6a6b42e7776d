import type { ComponentChildren } from "preact";
import { useRef } from "preact/hooks";

interface FileButtonProps {
  /** Of the button, for who presses it from elsewhere. */
  readonly id?: string;
  readonly label: string;
  readonly accept?: string;
  readonly multiple?: boolean;
  readonly class?: string;
  readonly tip?: string;
  readonly onFiles: (files: File[]) => void;
  readonly children: ComponentChildren;
}

/** A button that asks for files; the same files can be chosen again. */
export function FileButton(props: FileButtonProps) {
  const input = useRef<HTMLInputElement>(null);
  return (
    <>
      <button
        type="button"
        id={props.id}
        class={props.class ?? "text-button"}
        aria-label={props.tip}
        data-tip={props.tip}
        onClick={() => input.current?.click()}
      >
        {props.children}
      </button>
      <input
        ref={input}
        type="file"
        hidden
        aria-label={props.label}
        accept={props.accept}
        multiple={props.multiple}
        onChange={(event) => {
          const files = [...(event.currentTarget.files ?? [])];
          event.currentTarget.value = "";
          if (files.length > 0) props.onFiles(files);
        }}
      />
    </>
  );
}
