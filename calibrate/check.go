package calibrate

import (
	"fmt"
	"math"

	"steelyard/planar"
)

// Limits of what is taken.
const (
	mostPixels     = 20000 // a side
	mostTap        = 100   // px
	mostReferences = 5
	mostRim        = 40
	leastLens      = 0.3
	mostLens       = 10
	leastSize      = 0.01 // m
	mostSize       = 20   // m
	mostNearer     = 1    // m

	leastLine = 20 // px, of a line and of a plumb line; a tap of ±3 px is then good to 20 %

	// flattest is the least height of each corner's triangle over the longest
	// side of a rectangle as seen.
	flattest = 0.02
	// narrowest is the least ratio of the axes of a plate as seen: 60° off.
	narrowest = 0.5
	// widestGap is the greatest part of a rim without a tap.
	widestGap = 150 * planar.Degree
	// roughest is how far a tap may lie off the ellipse, in parts of its longer
	// half axis; four standard deviations of the tap are allowed anyway.
	roughest = 0.02
	// farOut is the misfit of references, in standard deviations, that no care
	// explains.
	farOut = 8
)

// check returns a *[Fault] unless the survey can be computed with.
func (s *Survey) check() error {
	switch n := len(s.Lines) + len(s.Rectangles) + len(s.Plates); {
	case s.Width < 1 || s.Height < 1 || s.Width > mostPixels || s.Height > mostPixels:
		return &Fault{"the photo", fmt.Sprintf("is %d × %d px; 1 to %d a side can be used", s.Width, s.Height, mostPixels), "choose another photo"}
	case n == 0:
		return &Fault{"the photo", "has nothing of known size marked", "tap a known length, a rectangle or a round plate"}
	case n > mostReferences:
		return &Fault{"the photo", fmt.Sprintf("has %d known sizes marked; %d are enough", n, mostReferences), "take some away"}
	case !(s.Tap == 0 || s.Tap >= 0.01 && s.Tap <= mostTap):
		return &Fault{"the error of a tap", fmt.Sprintf("is %g px; it can be 0.01 to %d px", s.Tap, mostTap), "give what a repeated tap differs by"}
	case !(s.Lens == 0 || s.Lens >= leastLens && s.Lens <= mostLens):
		return &Fault{"the lens", fmt.Sprintf("has %g times the photo's longer side as its focal length; %g to %d can be used", s.Lens, leastLens, mostLens), "leave it out for a phone's main lens"}
	case s.Near > BottomSide:
		return &Fault{"the nearer side", "is none of the photo's four", "choose left, right, top or bottom"}
	}
	if s.Origin != nil {
		if err := s.onPhoto("the origin", *s.Origin); err != nil {
			return err
		}
	}
	for i := range s.Lines {
		if err := s.checkLine(&s.Lines[i]); err != nil {
			return err
		}
	}
	for i := range s.Rectangles {
		if err := s.checkRectangle(&s.Rectangles[i]); err != nil {
			return err
		}
	}
	for i := range s.Plates {
		if err := s.checkPlate(&s.Plates[i]); err != nil {
			return err
		}
	}
	return s.checkUpright()
}

// checkUpright looks at the plumb or level line.
func (s *Survey) checkUpright() error {
	if s.Plumb != nil && s.Level != nil {
		return &Fault{"the photo", "has a plumb line and a level line", "keep the better one"}
	}
	if s.Plumb != nil {
		if err := s.apart("the plumb line", s.Plumb[0], s.Plumb[1]); err != nil {
			return err
		}
		if d := s.Plumb[1].vec().Sub(s.Plumb[0].vec()); d.Y < math.Abs(d.X) {
			return &Fault{"the plumb line", "lies more than 45° off the photo's upright", "tap its upper place first, then the lower one; turn the photo if it lies on its side"}
		}
	}
	if s.Level != nil {
		if err := s.apart("the level line", s.Level[0], s.Level[1]); err != nil {
			return err
		}
		if d := s.Level[1].vec().Sub(s.Level[0].vec()); math.Abs(d.X) < math.Abs(d.Y) {
			return &Fault{"the level line", "lies more than 45° off level in the photo", "tap two places equally high; turn the photo if it lies on its side"}
		}
	}
	return nil
}

// onPhoto returns an error unless p is on the photo.
func (s *Survey) onPhoto(what string, p Pixel) error {
	if p.X >= 0 && p.Y >= 0 && p.X <= float64(s.Width) && p.Y <= float64(s.Height) {
		return nil
	}
	return &Fault{what, fmt.Sprintf("is tapped at %.0f px right, %.0f px down, off the photo of %d × %d px", p.X, p.Y, s.Width, s.Height), "tap it on the photo"}
}

// apart returns an error unless a and b are on the photo, and apart.
func (s *Survey) apart(what string, a, b Pixel) error {
	for _, p := range []Pixel{a, b} {
		if err := s.onPhoto(what, p); err != nil {
			return err
		}
	}
	if l := b.vec().Sub(a.vec()).Norm(); l < leastLine {
		return &Fault{what, fmt.Sprintf("is %.0f px long in the photo; at least %d are needed", l, leastLine), "tap its two ends, or choose something longer"}
	}
	return nil
}

// checkSize looks at a known size, its ± and how far in front it is.
func checkSize(what string, size, plus, nearer float64) error {
	switch {
	case !(size >= leastSize && size <= mostSize):
		return &Fault{what, fmt.Sprintf("is %.4g mm; %g mm to %d m can be used", 1000*size, 1000*leastSize, mostSize), "check the number and its unit"}
	case !(plus >= 0 && plus <= size/4):
		return &Fault{what, fmt.Sprintf("is %.4g mm ± %.4g mm; ± can be up to a quarter of it", 1000*size, 1000*plus), "measure it again"}
	case !(math.Abs(nearer) <= mostNearer):
		return &Fault{what, fmt.Sprintf("is %.4g mm in front of the plane of motion; up to %d mm can be used", 1000*nearer, 1000*mostNearer), "choose something closer to the plane of motion"}
	}
	return nil
}

func (s *Survey) checkLine(l *Line) error {
	if err := s.apart("the known length", l.From, l.To); err != nil {
		return err
	}
	return checkSize("the known length", l.Length, l.Plus, l.Nearer)
}

func (s *Survey) checkRectangle(r *Rectangle) error {
	for _, c := range r.Corners {
		if err := s.onPhoto("a corner of the rectangle", c); err != nil {
			return err
		}
	}
	if err := checkSize("the rectangle's width", r.Width, r.Plus, r.Nearer); err != nil {
		return err
	}
	if err := checkSize("the rectangle's height", r.Height, r.Plus, r.Nearer); err != nil {
		return err
	}
	c := vecs(r.Corners[:])
	longest := 0.0
	for i := range c {
		longest = max(longest, c[(i+1)%4].Sub(c[i]).Norm())
	}
	if longest < leastLine {
		return &Fault{"the rectangle", fmt.Sprintf("is %.0f px large in the photo; at least %d are needed", longest, leastLine), "tap its four corners, or choose a larger one"}
	}
	left, right := 0, 0
	for i := range c {
		turn := c[(i+1)%4].Sub(c[i]).Cross(c[(i+2)%4].Sub(c[(i+1)%4]))
		switch {
		case math.Abs(turn) < flattest*longest*longest:
			return &Fault{"the rectangle", "has three corners nearly in a line", "tap its four corners, and look at it squarer"}
		case turn > 0:
			right++
		default:
			left++
		}
	}
	if left > 0 && right > 0 {
		return &Fault{"the rectangle", "has sides that cross, or a corner that points inwards", "tap the corners in order round it"}
	}
	return nil
}

func (s *Survey) checkPlate(p *Plate) error {
	if n := len(p.Rim); n < 5 || n > mostRim {
		return &Fault{"the plate", fmt.Sprintf("has %d places on its rim; 5 to %d can be used", n, mostRim), "tap its rim all round"}
	}
	for _, t := range p.Rim {
		if err := s.onPhoto("a place on the plate's rim", t); err != nil {
			return err
		}
	}
	if err := checkSize("the plate's diameter", p.Diameter, p.Plus, p.Nearer); err != nil {
		return err
	}
	e, ok := ellipseThrough(vecs(p.Rim))
	switch {
	case !ok || e.major > 2*float64(s.Width+s.Height):
		return &Fault{"the plate", "has rim places that lie on no ellipse", "tap its rim all round, evenly spread"}
	case 2*e.major < leastLine:
		return &Fault{"the plate", fmt.Sprintf("is %.0f px across in the photo; at least %d are needed", 2*e.major, leastLine), "choose a larger one, or go closer"}
	case e.minor < narrowest*e.major:
		return &Fault{"the plate", fmt.Sprintf("is seen %.0f° off square; up to %.0f° can be used", float64(e.tilt().Norm())/float64(planar.Degree), math.Acos(narrowest)/float64(planar.Degree)), "check the rim places, or take the photo from the side"}
	case e.gap(vecs(p.Rim)) > widestGap:
		return &Fault{"the plate", fmt.Sprintf("has no place tapped on %.0f° of its rim; leave at most %.0f°", e.gap(vecs(p.Rim)).Degrees(), widestGap.Degrees()), "tap its rim all round"}
	}
	for i, t := range p.Rim {
		if off := e.off(t.vec()); off > max(roughest*e.major, 4*s.tap()) {
			return &Fault{fmt.Sprintf("rim place %d of the plate", i+1), fmt.Sprintf("is %.0f px off the ellipse through all of them", off), "tap each on the same edge of the plate"}
		}
	}
	return nil
}
