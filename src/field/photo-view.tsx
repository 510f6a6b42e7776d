import { useEffect, useState } from "preact/hooks";
import { PHOTO_ELSEWHERE, photoSizeWords } from "../../shared/words/field-built.ts";
import { type StoredPhoto, storedPhoto } from "../document/photos.ts";

/** A photo that is kept on this device, and what room it takes; said where it is on another. */
export function PhotoView({ id }: { readonly id: string }) {
  const [photo, setPhoto] = useState<
    (StoredPhoto & { readonly address: string }) | null | "looking"
  >("looking");
  useEffect(() => {
    let address = "";
    let isWanted = true;
    void storedPhoto(id).then((found) => {
      if (!isWanted) return;
      address = found ? URL.createObjectURL(found.picture) : "";
      setPhoto(found && { ...found, address });
    });
    return () => {
      isWanted = false;
      URL.revokeObjectURL(address);
    };
  }, [id]);
  if (photo === "looking") return null;
  if (photo === null) return <p class="crew-soft">{PHOTO_ELSEWHERE}</p>;
  return (
    <figure class="crew-photo">
      <img src={photo.address} width={photo.widthPx} height={photo.heightPx} alt="This stretch" />
      <figcaption>{photoSizeWords(photo.picture.size)}</figcaption>
    </figure>
  );
}
