package family

import (
	"embed"
	"fmt"
	"math"
	"strings"
	"sync"

	"steelyard/planar"
	"steelyard/quantity"
	"steelyard/sheet"
)

// Family is a kind of machine with the questions that build one.
type Family struct {
	ID     string
	Name   string
	About  string
	Points []PointAsk // in the order to be asked
	Values []ValueAsk
	Cam    *OutlineAsk // nil if the family has no cam

	text  string // the sheet with usual figures
	bends []bend
	span  *span
}

// PointAsk asks where something is.
type PointAsk struct {
	Name     string
	Ask      string // "Where does the arm turn?"
	Hint     string
	Picture  string     // what to show: the part's kind, such as axle, pin, horn, grip
	Optional bool       // left out of the sheet if not answered
	Usual    planar.Vec // m

	guide bool     // tells a side and has no place in the sheet
	parts []string // of the sheet that fall away with it
}

// ValueAsk asks for a number.
type ValueAsk struct {
	Name                   string
	Ask                    string
	Hint                   string
	Unit                   quantity.Unit // in which it is asked for
	Low, High, Step, Usual float64       // in that unit

	path    string // in the sheet
	setting string // whose default and range it is too
	signed  bool   // the way that lifts the load is found
}

// OutlineAsk asks for the outline of a cam, by places once round it.
type OutlineAsk struct {
	Name    string
	Ask     string
	Hint    string
	Picture string
	Least   int          // number of places
	Usual   []planar.Vec // m, in the frame of the points

	axis string // point it is measured from in the sheet
}

// bend tells which way round a rope goes at a sheave or cam: that of the turn
// from a to b to c.
type bend struct{ round, a, b, c string }

// span is a number of the sheet that is the distance of two points.
type span struct{ path, from, to string }

//go:embed sheets/*.yaml
var sheets embed.FS

// All returns every family, simplest first.
func All() []Family { return loaded() }

// find returns the family, or nil.
func find(id string) *Family {
	all := loaded()
	for i := range all {
		if all[i].ID == id {
			return &all[i]
		}
	}
	return nil
}

// loaded reads the sheets and takes what is usual from them.
var loaded = sync.OnceValue(func() []Family {
	all := questions()
	for i := range all {
		all[i].load()
	}
	return all
})

// load reads the family's sheet. It panics if that is at fault: it is ours.
func (f *Family) load() {
	data, err := sheets.ReadFile("sheets/" + f.ID + ".yaml")
	if err != nil {
		panic(err)
	}
	f.text = string(data)
	doc, err := sheet.Read(f.ID, data)
	if err != nil {
		panic(err)
	}
	m, err := doc.Machine()
	if err != nil {
		panic(err)
	}
	b, err := m.Build(nil)
	if err != nil {
		panic(err)
	}
	usual := map[string]sheet.Measurement{}
	for _, n := range b.Measurements {
		usual[n.Path] = n
	}
	at := func(path string) float64 {
		n, ok := usual[path]
		if !ok {
			panic(fmt.Sprintf("family %s: the sheet has no %s", f.ID, path))
		}
		return n.Value
	}
	for i := range f.Points {
		if p := &f.Points[i]; !p.guide {
			p.Usual = planar.Vec{X: at("points." + p.Name + ".x"), Y: at("points." + p.Name + ".y")}
		}
	}
	for i := range f.Values {
		v := &f.Values[i]
		path := v.path
		if v.setting != "" {
			path = "settings." + v.setting + ".default"
		}
		v.Usual = math.Round(1e6*v.Unit.FromSI(at(path))) / 1e6
		if v.signed {
			v.Usual = max(v.Usual, -v.Usual)
		}
	}
	if f.Cam != nil {
		axis := f.usual(f.Cam.axis)
		for i := 1; ; i++ {
			x, ok := usual[fmt.Sprintf("cams.cam.traced.%d.x", i)]
			if !ok {
				break
			}
			f.Cam.Usual = append(f.Cam.Usual, axis.Add(planar.Vec{X: x.Value, Y: at(strings.TrimSuffix(x.Path, "x") + "y")}))
		}
	}
}

// usual returns the usual place of a point.
func (f *Family) usual(name string) planar.Vec {
	for _, p := range f.Points {
		if p.Name == name {
			return p.Usual
		}
	}
	panic(fmt.Sprintf("family %s: nobody asks for %s", f.ID, name))
}
