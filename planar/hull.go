package planar

import (
	"cmp"
	"slices"
)

// hull returns the indices of the corners of the convex hull of points,
// counter-clockwise. Points on a side of the hull are left out.
//
// Source: A. M. Andrew, "Another efficient algorithm for convex hulls in two
// dimensions", Information Processing Letters 9 (1979), from memory.
func hull(points []Vec) []int {
	order := make([]int, len(points))
	for i := range order {
		order[i] = i
	}
	slices.SortFunc(order, func(i, j int) int {
		return cmp.Or(cmp.Compare(points[i].X, points[j].X), cmp.Compare(points[i].Y, points[j].Y))
	})
	lower := chain(points, order)
	slices.Reverse(order)
	upper := chain(points, order)
	return append(lower, upper...)
}

// chain returns those of the ordered points that a walk past all of them visits
// when it only turns left, without the last one.
func chain(points []Vec, order []int) []int {
	var walk []int
	for _, i := range order {
		for len(walk) > 1 {
			p, q := points[walk[len(walk)-2]], points[walk[len(walk)-1]]
			if q.Sub(p).Cross(points[i].Sub(q)) > 0 {
				break
			}
			walk = walk[:len(walk)-1]
		}
		walk = append(walk, i)
	}
	return walk[:len(walk)-1]
}
