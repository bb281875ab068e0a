import { useEffect, useState } from "preact/hooks";

const query = "(min-width: 900px)";

/** useWide reports whether there is room for two columns. */
export function useWide(): boolean {
  const [wide, setWide] = useState(() => matchMedia(query).matches);
  useEffect(() => {
    const list = matchMedia(query);
    const read = () => {
      // A sheet of paper is no narrow screen: what is drawn anew while it is printed comes after the pages are counted.
      if (!matchMedia("print").matches) setWide(list.matches);
    };
    list.addEventListener("change", read);
    return () => list.removeEventListener("change", read);
  }, []);
  return wide;
}
