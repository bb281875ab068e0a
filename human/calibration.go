package human

import (
	"math"
	"sort"

	"steelyard/planar"
	"steelyard/reference"
)

// calibration is one measured point of a person turned into a factor on the
// published curve.
type calibration struct {
	angle  planar.Angle
	factor float64 // measured over published
	rel    float64 // standard deviation over the moment
}

const (
	usualMeasuring = 0.10 // relative spread of a measured moment where none is given; own choice
	shapeDoubt     = 0.15 // relative, for each radian away from the nearest measured point; own choice
	oddFactor      = 3.0  // measured over published beyond which a warning is due
	leastPublished = 1.0  // N·m, below which a published curve cannot be rescaled
)

// calibrate turns checked measured points into factors.
func (c *Capacity) calibrate(points []Strength) ([]Warning, error) {
	var warnings []Warning
	for _, s := range points {
		place := "strength: " + s.Action.String()
		usual, ok := c.published(s.Action, s.Angle, s.Speed)
		if !ok {
			usual.Moment = leastPublished
		} else if usual.Fallen || usual.Moment < leastPublished {
			return nil, refuse(place, "the published curve is no guide at %.0f°, so a point there cannot set its level; measure nearer the middle of the range", s.Angle.Degrees())
		}
		p := calibration{s.Angle, s.Moment / usual.Moment, s.Spread / s.Moment}
		if p.rel == 0 {
			p.rel = usualMeasuring
		}
		if ok && (p.factor > oddFactor || p.factor < 1/oddFactor) {
			warnings = append(warnings, warn(place, "%.0f N·m at %.0f° is %.1f times the usual %.0f N·m; check the arm length and whether it was one limb", s.Moment, s.Angle.Degrees(), p.factor, usual.Moment))
		}
		c.measured[s.Action] = append(c.measured[s.Action], p)
	}
	for a := range c.measured {
		if len(c.measured[a]) == 0 {
			continue
		}
		c.measured[a] = merged(c.measured[a])
		if len(c.actions[a]) == 0 {
			c.sources[a] = reference.Source{Text: "no published curve: held level", Mark: reference.Interpolated}
		}
		c.sources[a].Text = "level measured on this person; shape: " + c.sources[a].Text
	}
	return warnings, nil
}

// merged sorts points by angle and takes the mean of those at the same angle.
func merged(points []calibration) []calibration {
	sort.SliceStable(points, func(i, j int) bool { return points[i].angle < points[j].angle })
	var out []calibration
	count := 0.0
	for _, p := range points {
		if n := len(out); n > 0 && p.angle-out[n-1].angle < touch {
			count++
			last := &out[n-1]
			last.factor += (p.factor - last.factor) / count
			last.rel += (p.rel - last.rel) / count
			continue
		}
		out, count = append(out, p), 1
	}
	return out
}

// rescaled is the published curve times the factor of the measured points:
// one point sets the level, several are joined by straight lines over the
// angle and held beyond the ends. The band is the measuring's, wider the
// further the angle lies from a measured point. An action without a published
// curve is held at what was measured.
func (c *Capacity) rescaled(a Action, angle planar.Angle, speed float64) Available {
	points := c.measured[a]
	out, ok := c.published(a, angle, speed)
	low, high := 1.0, 1.0
	if !ok {
		out = Available{Moment: leastPublished, Source: c.sources[a]}
	} else {
		share, l, h := speedShare(c.actions[a][0].curve, speed)
		if share > 0 {
			low, high = l/share, h/share
		}
	}
	factor, rel := between(points, angle)
	out.Moment *= factor
	out.Low = out.Moment * low * max(0, 1-rel)
	out.High = out.Moment * high * (1 + rel)
	out.Rescaled = true
	return out
}

// between returns factor and relative spread at an angle.
func between(points []calibration, angle planar.Angle) (factor, rel float64) {
	i := sort.Search(len(points), func(i int) bool { return points[i].angle >= angle })
	nearest := points[min(i, len(points)-1)]
	factor = nearest.factor
	if i > 0 {
		before := points[i-1]
		if i == len(points) {
			nearest, factor = before, before.factor
		} else {
			t := float64((angle - before.angle) / (nearest.angle - before.angle))
			factor = before.factor + t*(nearest.factor-before.factor)
			if t < 0.5 {
				nearest = before
			}
		}
	}
	return factor, math.Hypot(nearest.rel, shapeDoubt*math.Abs(float64(angle-nearest.angle)))
}
