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
	out := api.Surveyed{Places: []api.Measured{}, Outline: []api.Measured{}, Rim: []api.Pixel{}, Words: []string{}}
	if len(in.Points)+len(in.Outline) > mostPoints {
		return out, bad("%d places were tapped, and %d can be measured at once; leave some out", len(in.Points)+len(in.Outline), mostPoints)
	}
	survey := surveyOf(in)
	plane, err := survey.Solve()
	if err != nil {
		return out, unfit(err)
	}
	for _, p := range in.Points {
		place, err := plane.Measure(calibrate.Pixel{X: p[0], Y: p[1]})
		if err != nil {
			return out, unfit(err)
		}
		out.Places = append(out.Places, measured(place))
	}
	if out.Outline, err = outline(plane, in.Outline); err != nil {
		return out, err
	}
	out.Plane, out.Inverse = plane.FromPhoto(), plane.ToPhoto()
	out.PerPixel, out.Tilt, out.Ambiguous, out.Words = plane.PerPixel(), float64(plane.Tilt()), plane.Ambiguous(), append(out.Words, plane.Words(quantity.Metric)...)
	if d := plane.Distance(); !math.IsInf(d, 0) {
		out.Distance = &d
	}
	if in.Plate != nil {
		for _, p := range plane.Rim(0) {
			out.Rim = append(out.Rim, api.Pixel{p.X, p.Y})
		}
	}
	return out, nil
}

// outline traces a cam.
func outline(plane *calibrate.Plane, taps []api.Pixel) ([]api.Measured, error) {
	out := []api.Measured{}
	if len(taps) == 0 {
		return out, nil
	}
	var places []planar.Vec
	for _, p := range taps {
		at, err := plane.At(calibrate.Pixel{X: p[0], Y: p[1]})
		if err != nil {
			return out, unfit(err)
		}
		places = append(places, at)
	}
	traced, err := calibrate.Trace(places, plane.Tap())
	if err != nil {
		return out, unfit(err)
	}
	for _, p := range traced {
		out = append(out, measured(p))
	}
	return out, nil
}

func measured(p calibrate.Point) api.Measured {
	return api.Measured{At: api.Place{p.At.X, p.At.Y}, Plus: api.Place{p.Plus.X, p.Plus.Y}}
}

// sides are the sides of a photo as package calibrate has them.
var sides = map[api.PhotoSide]calibrate.Side{api.LeftSide: calibrate.LeftSide, api.RightSide: calibrate.RightSide, api.TopSide: calibrate.TopSide, api.BottomSide: calibrate.BottomSide}

func surveyOf(in api.Survey) calibrate.Survey {
	pixel := func(p api.Pixel) calibrate.Pixel { return calibrate.Pixel{X: p[0], Y: p[1]} }
	two := func(p *[2]api.Pixel) *[2]calibrate.Pixel {
		if p == nil {
			return nil
		}
		return &[2]calibrate.Pixel{pixel(p[0]), pixel(p[1])}
	}
	s := calibrate.Survey{Width: in.Width, Height: in.Height, Near: sides[in.Near], Mirror: in.Mirror, Tap: in.Tap, Lens: in.Lens, Cropped: in.Cropped,
		Plumb: two(in.Plumb), Level: two(in.Level)}
	if in.Origin != nil {
		o := pixel(*in.Origin)
		s.Origin = &o
	}
	if l := in.Scale; l != nil {
		s.Lines = append(s.Lines, calibrate.Line{From: pixel(l.From), To: pixel(l.To), Length: l.Length, Plus: l.Plus, Nearer: l.Nearer})
	}
	if r := in.Rectangle; r != nil {
		c := calibrate.Rectangle{Width: r.Width, Height: r.Height, Plus: r.Plus, Nearer: r.Nearer}
		for i, p := range r.Corners {
			c.Corners[i] = pixel(p)
		}
		s.Rectangles = append(s.Rectangles, c)
	}
	if p := in.Plate; p != nil {
		c := calibrate.Plate{Diameter: p.Diameter, Plus: p.Plus, Nearer: p.Nearer}
		for _, q := range p.Rim {
			c.Rim = append(c.Rim, pixel(q))
		}
		s.Plates = append(s.Plates, c)
	}
	return s
}

// unfit tells the page what is wrong with what was tapped.
func unfit(err error) error {
	var fault *calibrate.Fault
	if errors.As(err, &fault) {
		return &requestError{http.StatusUnprocessableEntity, api.Unusable, fault.Error()}
	}
	return err
}
