import type { RefObject } from "preact";
import { useLayoutEffect, useRef, useState } from "preact/hooks";
import type { Size } from "../drawing/view.ts";

/** useSize returns a reference for an element and its size in px; null until it is laid out. */
export function useSize<E extends Element>(): [RefObject<E | null>, Size | null] {
  const ref = useRef<E>(null);
  const [size, setSize] = useState<Size | null>(null);
  useLayoutEffect(() => {
    const element = ref.current;
    if (!element) return;
    const read = () => {
      const { width, height } = element.getBoundingClientRect();
      setSize((s) => (s && s.width === width && s.height === height ? s : { width, height }));
    };
    read();
    const observer = new ResizeObserver(read);
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  return [ref, size];
}
