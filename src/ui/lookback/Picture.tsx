/** A picture that was taken in a round. */
import { useEffect, useState } from 'react';
import { HoldButton } from '../parts/HoldButton.tsx';

/** Address of a kept picture, to be given back when it is no longer shown; null once the picture is gone. */
export type PictureUrl = (id: string) => Promise<string | null>;

export interface PictureProps {
  readonly id: string;
  /** What it shows: "left front tire". */
  readonly what: string;
  readonly photoUrl: PictureUrl;
  /** Null where it is only shown. @returns whether it is gone */
  readonly onDelete: (() => Promise<boolean>) | null;
}

export function Picture({ id, what, photoUrl, onDelete }: PictureProps) {
  const [url, setUrl] = useState<string | null | undefined>(undefined);
  const [isBroken, setBroken] = useState(false);
  // biome-ignore lint/correctness/useExhaustiveDependencies: `photoUrl` is new at every render and always asks the same record
  useEffect(() => {
    let wanted = true;
    let mine: string | null = null;
    const show = (found: string | null) => {
      mine = found;
      if (wanted) setUrl(found);
      else if (found !== null) URL.revokeObjectURL(found);
    };
    photoUrl(id).then(show, () => show(null));
    return () => {
      wanted = false;
      if (mine !== null) URL.revokeObjectURL(mine);
    };
  }, [id]);
  if (url === undefined) return null;
  if (url === null) return <p className="quiet">The picture is no longer kept.</p>;
  return (
    <figure className="look-picture">
      {isBroken ? (
        <p>This picture is damaged and cannot be shown.</p>
      ) : (
        <img className="look-photo" src={url} alt={`Taken at ${what}`} onError={() => setBroken(true)} />
      )}
      {onDelete && (
        <div className="screen-only">
          <HoldButton
            label={`Delete the picture taken at ${what}`}
            onHeld={() => void onDelete().then((gone) => gone && setUrl(null))}
          >
            Delete the picture
          </HoldButton>
        </div>
      )}
    </figure>
  );
}
