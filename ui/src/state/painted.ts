/**
 * Records how long it took from a move of the finger until the answer stood on
 * the page, as performance measures: "steelyard:drag" until the changed page
 * was laid out, "steelyard:shown" until the frame after that.
 */
export function painted(since: number): void {
  queueMicrotask(() => {
    // microtasks run in order, and the page was drawn anew by one queued before
    document.body.getBoundingClientRect(); // lays out what has changed
    performance.measure("steelyard:drag", { start: since, end: performance.now() });
    requestAnimationFrame(() => {
      const after = new MessageChannel();
      after.port1.onmessage = () => performance.measure("steelyard:shown", { start: since, end: performance.now() });
      after.port2.postMessage(null);
    });
  });
}
