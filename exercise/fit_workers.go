package exercise

import (
	"context"
	"runtime"
	"sync"
)

// shareOut does 0 to n-1, in any order, on several workers (0: one for each
// processor) and returns the context's error if that ends first. Progress, if
// not nil, is called by one worker at a time with a growing count.
func shareOut(ctx context.Context, n, workers int, progress func(done, total int), do func(i int)) error {
	if workers <= 0 {
		workers = runtime.GOMAXPROCS(0)
	}
	var mu sync.Mutex
	next, done := 0, 0
	take := func() (int, bool) {
		mu.Lock()
		defer mu.Unlock()
		next++
		return next - 1, next <= n && ctx.Err() == nil
	}
	var all sync.WaitGroup
	for range min(workers, n) {
		all.Add(1)
		go func() {
			defer all.Done()
			for i, ok := take(); ok; i, ok = take() {
				do(i)
				mu.Lock()
				done++
				if progress != nil {
					progress(done, n)
				}
				mu.Unlock()
			}
		}()
	}
	all.Wait()
	return ctx.Err()
}
