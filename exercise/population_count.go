package exercise

import (
	"context"
	"errors"
	"math"
	"reflect"
	"slices"

	"steelyard/human"
	"steelyard/reference"
)

// crowd is a population check under way.
type crowd struct {
	out    *Coverage
	within float64
	people []human.Drawn
	ranges map[reference.Sex]human.Ranges
	places []*Setup  // that differ in where they put the body
	at     [][][]int // by dial and value: the places it can lead to
	fits   []bool    // by person, then place
}

// settle sets the machine up for every choice and keeps what differs.
func (c *crowd) settle(ctx context.Context, dials []Dial, picks [][]int, build Build) error {
	out := c.out
	out.Tried = 1
	for d, dial := range out.Dials {
		c.at = append(c.at, make([][]int, len(dial.Values)))
		out.Tried *= len(picks[d])
	}
	var broken error
	choice, real := make([]int, len(dials)), make([]int, len(dials))
	for i := range out.Tried {
		if err := ctx.Err(); err != nil {
			return err
		}
		for d, k := len(dials)-1, i; d >= 0; d-- {
			choice[d] = k % len(picks[d])
			real[d] = picks[d][choice[d]]
			k /= len(picks[d])
		}
		s, _, err := build(slices.Clone(real))
		if err != nil {
			out.Failed, broken = out.Failed+1, err
			continue
		}
		p := c.placeOf(s)
		for d, v := range choice {
			if !slices.Contains(c.at[d][v], p) {
				c.at[d][v] = append(c.at[d][v], p)
			}
		}
	}
	if len(c.places) == 0 {
		return errors.Join(errors.New("exercise: the machine can be set up for no choice of its settings"), broken)
	}
	out.Places, out.Exercise, out.HasAxis = len(c.places), c.places[0].Exercise, c.places[0].Station.HasAxis
	return nil
}

// placeOf returns the number of the place a setup puts the body in, a new one
// if none yet is the same.
func (c *crowd) placeOf(s *Setup) int {
	for i, p := range c.places {
		if p.Exercise == s.Exercise && p.space == s.space && p.Axis == s.Axis && slices.Equal(p.points, s.points) && reflect.DeepEqual(p.Station, s.Station) {
			return i
		}
	}
	c.places = append(c.places, s)
	return len(c.places) - 1
}

// tryOn fills in at which places person i fits.
func (c *crowd) tryOn(i int) {
	b := c.body(c.people[i])
	for p, s := range c.places {
		c.fits[i*len(c.places)+p] = s.suits(b, c.within)
	}
}

func (c *crowd) body(d human.Drawn) *human.Body {
	return &human.Body{Links: human.LinksOf(d.Size), Ranges: c.ranges[d.Sex]}
}

// suits reports whether a body fits a place. The ends of the travel, where most
// fail, are looked at first.
func (s *Setup) suits(b *human.Body, within float64) bool {
	var pl Placement
	last := len(s.points) - 1
	for k := range s.points {
		i := k
		switch k {
		case 1:
			i = last
		case last:
			i = 1
		}
		if f, off := s.misfit(&pl, b, i, within); f.Kind != NoFault || off > 0 {
			return false
		}
	}
	return true
}

// misfit returns what is wrong at a position: a fault, or by how much the joint
// is too far from the machine's axis, m.
func (s *Setup) misfit(pl *Placement, b *human.Body, i int, within float64) (f Fault, off float64) {
	f = s.Place(pl, b, i)
	if f.Kind == NotThere {
		return Fault{}, 0 // the machine's own gap is nobody's misfit
	}
	if f.Kind == NoFault && s.Station.HasAxis {
		off = max(0, s.misalignment(pl)-within)
	}
	return f, off
}

// count adds up whom the machine serves.
func (c *crowd) count() {
	out := c.out
	heights := make([][][]float64, len(out.Dials))
	for d, dial := range out.Dials {
		out.Values = append(out.Values, make([]ValueServed, len(dial.Values)))
		heights[d] = make([][]float64, len(dial.Values))
	}
	for i, person := range c.people {
		row := c.row(i)
		served := slices.Contains(row, true)
		out.All.add(served)
		if person.Sex == reference.Female {
			out.Women.add(served)
		} else {
			out.Men.add(served)
		}
		if !served {
			continue
		}
		for d := range out.Dials {
			only, n := 0, 0
			for v, places := range c.at[d] {
				if slices.ContainsFunc(places, func(p int) bool { return row[p] }) {
					only, n = v, n+1
					out.Values[d][v].Served++
					heights[d][v] = append(heights[d][v], person.Size[reference.Stature])
				}
			}
			if n == 1 {
				out.Values[d][only].Only++
			}
		}
	}
	for d := range heights {
		for v, h := range heights[d] {
			slices.Sort(h)
			out.Values[d][v].Low, out.Values[d][v].High = quantile(h, 0.05), quantile(h, 0.95)
		}
	}
}

func (c *crowd) row(i int) []bool { return c.fits[i*len(c.places) : (i+1)*len(c.places)] }

func (s *Served) add(served bool) {
	s.People++
	if served {
		s.Served++
	}
}

// quantile returns the value below which a share of sorted numbers lie; 0 of
// none.
func quantile(sorted []float64, share float64) float64 {
	if len(sorted) == 0 {
		return 0
	}
	return sorted[int(math.Round(share*float64(len(sorted)-1)))]
}

// Matters reports whether the values of a dial serve different people.
func (c *Coverage) Matters(d int) bool {
	for _, v := range c.Values[d] {
		if v != c.Values[d][0] {
			return true
		}
	}
	return false
}
