package server

import (
	"errors"
	"net/http"
	"slices"
	"strings"
	"sync"

	"steelyard/internal/server/api"
	"steelyard/internal/server/view"
	"steelyard/internal/store"
	"steelyard/sheet"
)

func card(sh store.Sheet) api.SheetCard {
	return api.SheetCard{ID: sh.ID, Kind: api.Kind(sh.Kind), Name: sh.Name, Revision: sh.Revision, Saved: sh.Saved, Demo: sh.Demo != "", Removed: sh.Removed}
}

// getRoom lists everything stored.
func (s *Server) getRoom(w http.ResponseWriter, r *http.Request) error {
	all, err := s.Store.Sheets(r.Context())
	if err != nil {
		return err
	}
	who := r.URL.Query().Get("person")
	person, err := s.person(r.Context(), who)
	if err != nil && !errors.Is(err, store.ErrNotFound) { // somebody who has gone is nobody
		return err
	}
	room := api.Room{Machines: []api.MachineCard{}, People: []api.SheetCard{}, Rooms: []api.SheetCard{}, Plans: []api.SheetCard{}, Removed: []api.SheetCard{},
		Folder: s.Store.Folder(), Engine: s.Engine}
	var machines []store.Sheet
	for _, sh := range all {
		c := card(sh)
		room.Demo = room.Demo || c.Demo && !c.Removed
		switch {
		case c.Removed:
			room.Removed = append(room.Removed, c)
		case c.Kind == api.KindMachine:
			machines = append(machines, sh)
		case c.Kind == api.KindPerson:
			room.People = append(room.People, c)
		case c.Kind == api.KindRoom:
			room.Rooms = append(room.Rooms, c)
		case c.Kind == api.KindPlan:
			room.Plans = append(room.Plans, c)
		}
	}
	slices.SortStableFunc(room.Removed, func(a, b api.SheetCard) int { return strings.Compare(b.Saved, a.Saved) })
	board := board{person: person}
	for _, sh := range all {
		if sh.ID == who {
			board.who = sh.Text
		}
	}
	room.Machines = s.machineCards(r, machines, board)
	return send(w, r, room)
}

// board is for whom the cards are: nobody, or a person with the text of their
// sheet.
type board struct {
	person *sheet.Person
	who    string
}

// machineCards evaluates the machines, several at once.
func (s *Server) machineCards(r *http.Request, sheets []store.Sheet, b board) []api.MachineCard {
	cards := make([]api.MachineCard, len(sheets))
	var wait sync.WaitGroup
	next := make(chan int)
	for range 4 {
		wait.Go(func() {
			for i := range next {
				cards[i] = s.cards.get([2]string{sheets[i].Text, b.who}, func() api.MachineCard {
					return view.Card(r.Context(), card(sheets[i]), sheets[i].Text, b.person)
				})
				cards[i].SheetCard = card(sheets[i])
			}
		})
	}
	for i := range sheets {
		next <- i
	}
	close(next)
	wait.Wait()
	return cards
}

// mostCards is how many evaluated cards are kept.
const mostCards = 1000

// cardCache keeps cards by the texts of machine and person.
type cardCache struct {
	lock sync.Mutex
	kept map[[2]string]api.MachineCard
}

func (c *cardCache) get(texts [2]string, evaluate func() api.MachineCard) api.MachineCard {
	c.lock.Lock()
	got, ok := c.kept[texts]
	c.lock.Unlock()
	if ok {
		return got
	}
	got = evaluate()
	c.lock.Lock()
	defer c.lock.Unlock()
	if c.kept == nil || len(c.kept) >= mostCards {
		c.kept = map[[2]string]api.MachineCard{}
	}
	c.kept[texts] = got
	return got
}

// setDemo brings the demo room back or takes it away.
func (s *Server) setDemo(w http.ResponseWriter, r *http.Request) error {
	var in api.Demo
	if err := read(r, &in); err != nil {
		return err
	}
	var err error
	if in.Present {
		err = s.Store.FillDemo(r.Context(), s.Demo, false)
	} else {
		err = s.Store.RemoveDemo(r.Context())
	}
	if err != nil {
		return err
	}
	return s.getRoom(w, r)
}
