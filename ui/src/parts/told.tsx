/** A list of sentences under a title that opens. */

export function Told({ title, lines, open = false }: { title: string; lines: readonly string[]; open?: boolean }) {
  if (!lines.length) return null;
  return (
    <details open={open}>
      <summary>{title}</summary>
      <ul>
        {lines.map((l) => (
          <li key={l}>{l}</li>
        ))}
      </ul>
    </details>
  );
}
