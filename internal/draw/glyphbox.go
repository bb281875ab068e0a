package draw

// glyphBox returns the hollow box that stands at at for a rune the font lacks.
func glyphBox(o textOp, at Point, r rune) Path {
	w, h := o.font.advance(r), capHeight*o.font.Size
	line := 0.06 * o.font.Size
	along, up := Towards(1, o.angle), Towards(1, o.angle).left()
	corner := func(x, y float64) Point { return at.Add(along.Scale(x)).Add(up.Scale(y)) }

	box := Polygon(corner(line, 0), corner(w-line, 0), corner(w-line, h), corner(line, h))
	box.Append(Polygon(corner(2*line, line), corner(2*line, h-line), corner(w-2*line, h-line), corner(w-2*line, line)))
	return box
}
