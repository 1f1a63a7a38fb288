package resect

import "example.org/rinkpane/internal/survey/edit"

// TakeOver returns the edit that moves the hole which is meant to where the frames say it
// is, or adds one there where none is near.
func TakeOver(a Answer) edit.Edit {
	station, height := a.Station.Metres(), a.Height.Metres()
	to := &edit.Spot{Station: &station, Height: &height}
	if h, ok := a.Near.Get(); ok {
		return edit.Edit{Do: edit.Move, Hole: h.ID, To: to}
	}
	return edit.Edit{Do: edit.Add, To: to}
}
