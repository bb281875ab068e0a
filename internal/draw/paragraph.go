package draw

import "strings"

// Wrap breaks s into lines no wider than width (mm), at spaces and at the line
// breaks it holds. A word wider than the line is cut.
func (f Font) Wrap(s string, width float64) []string {
	var lines []string
	space := f.width(" ")
	for _, part := range strings.Split(s, "\n") {
		line, used := "", 0.0
		for _, word := range strings.Fields(clean(part)) {
			for _, piece := range f.cut(word, width) {
				w := f.width(piece)
				switch {
				case line == "":
					line, used = piece, w
				case used+space+w <= width:
					line, used = line+" "+piece, used+space+w
				default:
					lines = append(lines, line)
					line, used = piece, w
				}
			}
		}
		lines = append(lines, line)
	}
	return lines
}

// cut returns word in pieces that fit width, at least one rune each.
func (f Font) cut(word string, width float64) []string {
	if f.width(word) <= width {
		return []string{word}
	}
	var pieces []string
	piece, used := "", 0.0
	for _, r := range word {
		w := f.width(string(r))
		if piece != "" && used+w > width {
			pieces = append(pieces, piece)
			piece, used = "", 0
		}
		piece, used = piece+string(r), used+w
	}
	return append(pieces, piece)
}

// Paragraph sets s in lines of width mm below the top left corner at, and
// returns the y below its last line.
func (p *Page) Paragraph(at Point, width float64, s string, f Font, a Align) float64 {
	return p.lines(at, width, f.Wrap(s, width), f, a)
}

func (p *Page) lines(at Point, width float64, lines []string, f Font, a Align) float64 {
	x := at.X + width*float64(a)/2
	for i, line := range lines {
		p.TextAt(Point{x, at.Y + float64(i)*f.Leading() + ascent*f.Size}, line, f, a)
	}
	return at.Y + float64(len(lines))*f.Leading()
}
