package draw

// Key is one line of a legend: a stroke, an area, or both.
type Key struct {
	Label   string
	Pen     Pen
	Fill    Color
	Hatched bool
}

// Legend lists the keys in a row from at (top left), wrapping at width, and
// returns the height it took, mm.
func (p *Page) Legend(at Point, width float64, keys []Key) float64 {
	s := p.scene
	f := s.Font(s.Theme.Ink)
	swatch, gap := 2.5*s.Text, 0.5*s.Text
	x, y := at.X, at.Y
	for _, k := range keys {
		w := swatch + gap + f.Measure(k.Label)
		if x > at.X && x+w > at.X+width {
			x, y = at.X, y+f.Leading()
		}
		p.swatch(Rect{x, y + 0.25*s.Text, swatch, 0.8 * s.Text}, k)
		p.TextAt(Point{x + swatch + gap, f.middle(y + f.Leading()/2)}, k.Label, f, Left)
		x += w + 3*gap
	}
	return y + f.Leading() - at.Y
}

func (p *Page) swatch(r Rect, k Key) {
	if k.Hatched {
		p.uncertain(r.Path(), k.Fill)
	} else {
		p.Fill(r.Path(), k.Fill)
	}
	y := r.Centre().Y
	p.Stroke(Polyline(Point{r.X, y}, Point{r.Right(), y}), k.Pen)
}
