/** The photo a machine was measured on, behind its drawing and in true place. */

import type { Sheet } from "../../api.ts";
import { matrix3d, product } from "../../drawing/homography.ts";
import type { View } from "../../drawing/view.ts";
import { addressOf } from "../../server/client.ts";

export function Backdrop({ sheet, view }: { sheet: Sheet | null; view: View }) {
  const b = sheet?.backdrop;
  if (!b) return null;
  const onto = product([view.scale, 0, view.origin[0], 0, -view.scale, view.origin[1], 0, 0, 1], b.plane);
  return (
    <div class="backdrop" aria-hidden="true">
      <img
        src={addressOf("GET /api/photos/{id}", { id: b.photo.id })}
        alt=""
        width={b.photo.width}
        height={b.photo.height}
        style={{ transform: matrix3d(onto) }}
      />
    </div>
  );
}
