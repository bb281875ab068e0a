package planar

import (
	"cmp"
	"slices"
)

// crossing finds two sides of a closed polygon that meet other than at a point
// they share as neighbours, and returns the indices of the points where they
// begin, the smaller one first.
//
// The sides are passed in order of their left ends. Only those that begin
// before one ends can meet it.
func crossing(points []Vec) (i, j int, found bool) {
	n := len(points)
	end := func(i int) Vec { return points[(i+1)%n] }
	left := func(i int) float64 { return min(points[i].X, end(i).X) }
	order := make([]int, n)
	for i := range order {
		order[i] = i
	}
	slices.SortFunc(order, func(i, j int) int {
		return cmp.Or(cmp.Compare(left(i), left(j)), cmp.Compare(i, j))
	})
	for k, i := range order {
		right := max(points[i].X, end(i).X)
		for _, j := range order[k+1:] {
			if left(j) > right {
				break
			}
			if (i+1)%n != j && (j+1)%n != i && meet(points[i], end(i), points[j], end(j)) {
				return min(i, j), max(i, j), true
			}
		}
	}
	return 0, 0, false
}

// meet reports whether the segments a-b and c-d, ends included, have a point in
// common.
func meet(a, b, c, d Vec) bool {
	ab, cd := b.Sub(a), d.Sub(c)
	sc, sd := ab.Cross(c.Sub(a)), ab.Cross(d.Sub(a))
	sa, sb := cd.Cross(a.Sub(c)), cd.Cross(b.Sub(c))
	if sa == 0 && sb == 0 && sc == 0 && sd == 0 { // all on one line
		t, u := c.Sub(a).Dot(ab), d.Sub(a).Dot(ab)
		return max(t, u) >= 0 && min(t, u) <= ab.Dot(ab)
	}
	return sa*sb <= 0 && sc*sd <= 0
}
