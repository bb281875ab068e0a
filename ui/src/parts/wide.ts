import { useEffect, useState } from "preact/hooks";

const query = "(min-width: 900px)";

/** useWide reports whether there is room for two columns. */
export function useWide(): boolean {
  const [wide, setWide] = useState(() => matchMedia(query).matches);
  useEffect(() => {
    const list = matchMedia(query);
    const read = () => setWide(list.matches);
    list.addEventListener("change", read);
    return () => list.removeEventListener("change", read);
  }, []);
  return wide;
}
