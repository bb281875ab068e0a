package calibrate

import (
	"math/rand/v2"

	"steelyard/planar"
)

// drawer draws errors. A nil one draws none.
type drawer struct {
	*rand.Rand
	tap float64 // px
}

// normal returns a draw of the standard normal distribution.
func (d *drawer) normal() float64 {
	if d == nil {
		return 0
	}
	return d.NormFloat64()
}

// pixel returns the place as tapped once more.
func (d *drawer) pixel(p Pixel) Pixel {
	if d == nil {
		return p
	}
	return Pixel{p.X + d.tap*d.normal(), p.Y + d.tap*d.normal()}
}

// size returns the length in m as measured once more.
func (d *drawer) size(length, plus float64) float64 {
	return max(length/2, length+plus/2*d.normal())
}

// again returns what might be known of the camera beforehand another time.
func (p prior) again(d *drawer) prior {
	if p.tiltError < float64(looseTilt) {
		p.tilt = planar.Vec{X: d.normal(), Y: d.normal()}.Scale(p.tiltError)
	}
	p.bend = max(0, p.bend+p.bendError*d.normal())
	p.middle = p.middle.Add(planar.Vec{X: d.normal(), Y: d.normal()}.Scale(p.middleError))
	return p
}

// repeated returns the homographies from pixels to places of the survey done
// again and again, each time looked for from the view found.
func (s *Survey) repeated(t *task, f *found) []matrix {
	d := &drawer{rand.New(rand.NewPCG(seed, 0)), t.tap}
	var out []matrix
	for range Repeats {
		once := &task{prior: t.prior.again(d), origin: t.origin, tap: t.tap}
		for _, r := range t.references {
			once.references = append(once.references, r.redrawn(d))
		}
		f, ok := once.from(f.x, fewSteps)
		if !ok {
			continue
		}
		if m, ok := s.upright(&f.view, d); ok {
			out = append(out, m)
		}
	}
	return out
}
