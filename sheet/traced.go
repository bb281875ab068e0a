package sheet

import (
	"fmt"
	"slices"
	"strconv"

	"steelyard/planar"
)

// traced is an outline drawn round with a pencil, points from its axis.
type traced struct {
	xy      []num // forward and up in turn
	corners []int // indices of points that are sharp
}

// traced reads [[x, y], …] and the numbers of the points that are corners.
func (r *reader) traced(n *node, label, what string, corners *node) form {
	var t traced
	if n.kind != sequence || len(n.items) < 3 {
		r.fault(n, fmt.Sprintf("%s is %s", what, seen(n)), "an outline is at least three points", "write [[x, y], …], measured forward and up from the axis")
		return circle{across: across{none, none}, center: noCenter}
	}
	for i, item := range n.items {
		x, y, ok := r.pair(item, fmt.Sprintf("%s, point %d", label, i+1), fmt.Sprintf("point %d of %s", i+1, what))
		if !ok {
			return circle{across: across{none, none}, center: noCenter}
		}
		t.xy = append(t.xy, x, y)
	}
	r.listed(corners, "corners of "+what, func(item *node) {
		k, err := strconv.Atoi(item.text)
		if err != nil || k < 1 || k > len(n.items) || slices.Contains(t.corners, k-1) {
			r.fault(item, fmt.Sprintf("a corner of %s is %s", what, seen(item)),
				fmt.Sprintf("a corner is the number of a traced point, 1 to %d, each once", len(n.items)), "count the points from the first")
			return
		}
		t.corners = append(t.corners, k-1)
	})
	slices.Sort(t.corners)
	return newCached(t, t.xy...)
}

func (t traced) outline(v values, start planar.Angle) (planar.Outline, error) {
	points := make([]planar.Vec, len(t.xy)/2)
	turn := planar.TurnThenShift(start, planar.Vec{})
	for i := range points {
		points[i] = turn.Point(planar.Vec{X: v.at(t.xy[2*i]), Y: v.at(t.xy[2*i+1])})
	}
	return planar.TracedThrough(points, t.corners...)
}

// cached keeps the outline of a form that is dear to make, for as long as the
// numbers behind it stay as they are in the sheet.
type cached struct {
	form
	nums   []num
	values []float64
	made   planar.Outline
}

func newCached(f form, nums ...num) *cached { return &cached{form: f, nums: nums} }

// keep makes the outline of the sheet's own numbers, if they allow one. It is
// called once, before the form is shared.
func (c *cached) keep(v values) {
	for _, n := range c.nums {
		c.values = append(c.values, v.at(n))
	}
	if made, err := c.form.outline(v, 0); err == nil {
		c.made = made
	}
}

func (c *cached) outline(v values, start planar.Angle) (planar.Outline, error) {
	for i, n := range c.nums {
		if c.made == nil || v.at(n) != c.values[i] {
			return c.form.outline(v, start)
		}
	}
	if start == 0 {
		return c.made, nil
	}
	return turned{c.made, start}, nil
}

// turned is an outline turned about its origin.
type turned struct {
	planar.Outline
	by planar.Angle
}

// Support implements [planar.Outline].
func (t turned) Support(phi planar.Angle) (h, dh float64) { return t.Outline.Support(phi - t.by) }

// Length implements [planar.Outline].
func (t turned) Length(phi planar.Angle) float64 {
	return t.Outline.Length(phi-t.by) - t.Outline.Length(-t.by)
}
