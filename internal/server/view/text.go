package view

import (
	"sync"

	"steelyard/internal/server/api"
	"steelyard/sheet"
)

// Text is a sheet's text, read at most once however often it is asked about. It
// need not be a usable sheet: what is wrong with it is told by whoever needs
// more of it. It is safe for concurrent use.
type Text struct {
	text     string
	document func() (*sheet.Document, error)
	opened   func() (*Opened, error)
}

// Read takes a text as a sheet's.
func Read(text string) *Text {
	t := &Text{text: text}
	t.document = sync.OnceValues(func() (*sheet.Document, error) { return sheet.Read("the sheet", []byte(t.text)) })
	t.opened = sync.OnceValues(func() (*Opened, error) {
		d, err := t.document()
		if err != nil {
			return nil, err
		}
		return open(d)
	})
	return t
}

// written is the text of a document.
func written(d *sheet.Document) *Text {
	t := &Text{text: string(d.Bytes())}
	t.document = func() (*sheet.Document, error) { return d, nil }
	t.opened = sync.OnceValues(func() (*Opened, error) { return open(d) })
	return t
}

// String returns the text.
func (t *Text) String() string { return t.text }

// Write returns the text with values written into it, every other byte as it
// is.
func (t *Text) Write(values []api.ValueEdit) (*Text, error) {
	if len(values) == 0 {
		return t, nil
	}
	d, err := t.document()
	if err != nil {
		return nil, err
	}
	changed := *d
	for _, v := range values {
		if err := changed.Set(v.Path, v.Text); err != nil {
			return nil, err
		}
	}
	return written(&changed), nil
}

// Stand returns what stands at each of the paths that values write to, for
// telling whether somebody else has changed it.
func (t *Text) Stand(values []api.ValueEdit) []string {
	out := make([]string, len(values))
	d, err := t.document()
	if err != nil {
		return out
	}
	for i, v := range values {
		out[i] = d.Text(v.Path)
	}
	return out
}
