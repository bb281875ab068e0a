/** Takes a photo with the phone's camera, or one that is there already. */

import { useRef } from "preact/hooks";
import type { Problem } from "../../api.ts";
import { TroubleNote } from "../../parts/notes.tsx";
import { words } from "../../words.ts";

interface PhotoButtonProps {
  label: string;
  take: (file: File) => Promise<void>;
  busy: boolean;
  strong?: boolean;
}

export function PhotoButton({ label, take, busy, strong }: PhotoButtonProps) {
  const input = useRef<HTMLInputElement>(null);
  return (
    <>
      <button type="button" class={strong ? "strong" : ""} disabled={busy} onClick={() => input.current?.click()}>
        {busy && strong ? words.build.reading : label}
      </button>
      <input
        ref={input}
        class="unseen"
        type="file"
        accept="image/jpeg,image/png,image/*"
        tabIndex={-1}
        aria-label={label}
        onChange={(e) => {
          const file = e.currentTarget.files?.[0];
          e.currentTarget.value = "";
          if (file) void take(file);
        }}
      />
    </>
  );
}

interface ChoosePhotoProps {
  take: (file: File) => Promise<void>;
  busy: boolean;
  trouble: Problem | null;
}

export function ChoosePhoto({ take, busy, trouble }: ChoosePhotoProps) {
  return (
    <div class="empty">
      <p>{words.build.photoHint}</p>
      {trouble && <TroubleNote problem={trouble} />}
      <PhotoButton label={words.build.choosePhoto} take={take} busy={busy} strong />
    </div>
  );
}
