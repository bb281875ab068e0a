package server

import (
	"errors"
	"math"
	"net/http"

	"steelyard/calibrate"
	"steelyard/internal/server/api"
	"steelyard/planar"
	"steelyard/quantity"
)

// mostPoints bounds what is measured at once.
const mostPoints = 5000

// survey measures places on a photo.
func (s *Server) survey(w http.ResponseWriter, r *http.Request) error {
	var in api.Survey
	if err := read(r, &in); err != nil {
		return err
	}
	out, err := surveyed(in)
	if err != nil {
		return err
	}
	return send(w, r, out)
}

// surveyed finds the plane of a photo and measures its places.
func surveyed(in api.Survey) (api.Surveyed, error) {
	out := api.Surveyed{Places: []api.Measured{}, Sides: []api.PhotoSide{}, Rims: [][]api.Pixel{}, Words: []string{}}
	if len(in.Points)+len(in.Outline) > mostPoints {
		return out, bad("%d places were tapped, and %d can be measured at once; leave some out", len(in.Points)+len(in.Outline), mostPoints)
	}
	survey := surveyOf(in)
	plane, err := survey.Solve()
	if err != nil {
		return out, unfit(err)
	}
	for _, p := range in.Points {
		place, err := plane.Measure(tapped(p))
		if err != nil {
			return out, unfit(err)
		}
		out.Places = append(out.Places, measured(place))
	}
	if out.Outline, out.Edge, err = outline(plane, in.Outline); err != nil {
		return out, err
	}
	out.Plane, out.Inverse = plane.FromPhoto(), plane.ToPhoto()
	out.PerPixel, out.Tilt, out.Ambiguous, out.Words = plane.PerPixel(), float64(plane.Tilt()), plane.Ambiguous(), append(out.Words, plane.Words(quantity.Metric)...)
	if d := plane.Distance(); !math.IsInf(d, 0) {
		out.Distance = &d
	}
	for _, side := range plane.Sides() {
		out.Sides = append(out.Sides, sides[side])
	}
	for i := range in.Plates {
		out.Rims = append(out.Rims, pixels(plane.Rim(i)))
	}
	return out, nil
}

// outline traces a cam: its points with the ± of a tap, for the sheet, and its
// smooth edge, for drawing.
func outline(plane *calibrate.Plane, taps []api.Pixel) (out []api.Measured, edge []api.Pixel, err error) {
	out, edge = []api.Measured{}, []api.Pixel{}
	if len(taps) == 0 {
		return out, edge, nil
	}
	var places []planar.Vec
	for _, p := range taps {
		at, err := plane.At(tapped(p))
		if err != nil {
			return out, edge, unfit(err)
		}
		places = append(places, at)
	}
	traced, err := calibrate.Trace(places, plane.Tap())
	if err != nil {
		return out, edge, unfit(err)
	}
	for _, p := range traced {
		out = append(out, measured(p))
	}
	curve, err := plane.Edge(traced)
	if err != nil {
		return out, edge, unfit(err)
	}
	return out, pixels(curve), nil
}

func measured(p calibrate.Point) api.Measured {
	return api.Measured{At: api.Place{p.At.X, p.At.Y}, Plus: api.Place{p.Plus.X, p.Plus.Y}}
}

// sides are the sides of a photo, by those of package calibrate.
var sides = map[calibrate.Side]api.PhotoSide{calibrate.AnySide: "", calibrate.LeftSide: api.LeftSide, calibrate.RightSide: api.RightSide, calibrate.TopSide: api.TopSide, calibrate.BottomSide: api.BottomSide}

// sideOf returns the side of that name, or one that package calibrate refuses.
func sideOf(name api.PhotoSide) calibrate.Side {
	for side, n := range sides {
		if n == name {
			return side
		}
	}
	return calibrate.BottomSide + 1
}

func surveyOf(in api.Survey) calibrate.Survey {
	s := calibrate.Survey{Width: in.Width, Height: in.Height, Near: sideOf(in.Near), Mirror: in.Mirror, Tap: in.Tap, Lens: in.Lens, Cropped: in.Cropped,
		Plumb: twoTaps(in.Plumb), Level: twoTaps(in.Level)}
	if in.Origin != nil {
		o := tapped(*in.Origin)
		s.Origin = &o
	}
	for _, l := range in.Lines {
		s.Lines = append(s.Lines, calibrate.Line{From: tapped(l.From), To: tapped(l.To), Length: l.Length, Plus: l.Plus, Nearer: l.Nearer})
	}
	for _, r := range in.Rectangles {
		c := calibrate.Rectangle{Width: r.Width, Height: r.Height, Plus: r.Plus, Nearer: r.Nearer}
		for i, p := range r.Corners {
			c.Corners[i] = tapped(p)
		}
		s.Rectangles = append(s.Rectangles, c)
	}
	for _, p := range in.Plates {
		c := calibrate.Plate{Diameter: p.Diameter, Plus: p.Plus, Nearer: p.Nearer}
		for _, q := range p.Rim {
			c.Rim = append(c.Rim, tapped(q))
		}
		s.Plates = append(s.Plates, c)
	}
	return s
}

func tapped(p api.Pixel) calibrate.Pixel { return calibrate.Pixel{X: p[0], Y: p[1]} }

func twoTaps(p *[2]api.Pixel) *[2]calibrate.Pixel {
	if p == nil {
		return nil
	}
	return &[2]calibrate.Pixel{tapped(p[0]), tapped(p[1])}
}

func pixels(places []calibrate.Pixel) []api.Pixel {
	out := make([]api.Pixel, len(places))
	for i, p := range places {
		out[i] = api.Pixel{p.X, p.Y}
	}
	return out
}

// unfit tells the page what is wrong with what was tapped.
func unfit(err error) error {
	var fault *calibrate.Fault
	if errors.As(err, &fault) {
		return &requestError{http.StatusUnprocessableEntity, api.Unusable, fault.Error()}
	}
	return err
}
