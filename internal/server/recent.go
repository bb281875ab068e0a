package server

import (
	"sync"

	"steelyard/internal/server/view"
)

// mostRecent is how many texts are kept read: those of a machine, of a person
// and of a comparison's six.
const mostRecent = 16

// recent keeps the texts last asked about, so that a sheet is read once and not
// for every move of a finger. Its zero value is ready to use.
type recent struct {
	mu    sync.Mutex
	texts []*view.Text // the latest last
}

// read returns the text as a sheet's.
func (r *recent) read(text string) *view.Text {
	r.mu.Lock()
	defer r.mu.Unlock()
	for i, t := range r.texts {
		if t.String() == text {
			r.texts = append(append(r.texts[:i:i], r.texts[i+1:]...), t)
			return t
		}
	}
	t := view.Read(text)
	if len(r.texts) == mostRecent {
		r.texts = append([]*view.Text(nil), r.texts[1:]...)
	}
	r.texts = append(r.texts, t)
	return t
}
