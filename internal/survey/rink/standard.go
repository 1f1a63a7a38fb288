package rink

import (
	"fmt"
	"strings"

	"example.org/rinkpane/internal/measure/unit"
)

// The names of the built-in rinks.
const (
	NorthAmerican = "north-american"
	International = "international"
)

// Standards lists the names of the built-in rinks.
func Standards() []string { return []string{NorthAmerican, International} }

// Standard returns one of the built-in rinks by its name.
func Standard(name string) (Rink, error) {
	switch name {
	case NorthAmerican:
		return New(northAmerican())
	case International:
		return New(international())
	}
	return Rink{}, fmt.Errorf("standard %q: unknown; write %s", name, strings.Join(Standards(), " or "))
}

// northAmerican is the rink of the North American professional rule book,
// edition 2023-24, Rules 1 and 2 (the numbers of the parts are from memory):
//
//	1.2  200 ft x 85 ft, corners of radius 28 ft
//	1.5  goal line 11 ft from the end boards, 2 in wide; blue lines 12 in wide,
//	     64 ft from the goal line to the neutral-zone edge: 75 ft from the boards,
//	     50 ft between the two
//	1.7  crease: arc of radius 6 ft about the middle of the goal line, cut off
//	     8 ft wide
//	1.9  end-zone spots 20 ft from the goal line and 22 ft off the axis, circles
//	     of radius 15 ft; neutral spots 5 ft from the blue line
//	2.1  goal 6 ft x 4 ft, 44 in deep (depth from memory)
//
// The college book asks for corners of radius 20 ft; older editions have the
// blue lines at 60 ft and the goal line at 12 to 15 ft.
func northAmerican() Dimensions {
	const ft, in = unit.Foot, unit.Inch
	return Dimensions{
		Length: 200 * ft, Width: 85 * ft, CornerRadius: 28 * ft,
		Markings: Markings{
			GoalLine: 11 * ft, BlueLine: 75 * ft, BlueLineTo: LineFarEdge,
			CircleRadius: 15 * ft, SpotFromGoal: 20 * ft, SpotFromAxis: 22 * ft, NeutralSpot: 5 * ft,
			GoalWidth: 6 * ft, GoalHeight: 4 * ft, GoalDepth: 44 * in,
			CreaseRadius: 6 * ft, CreaseWidth: 8 * ft,
			LineWidth: 2 * in, BlueWidth: 12 * in,
		},
	}
}

// international is the rink of the international federation's rule book:
//
//	2023/24, 1.2  60 m x 26 to 30 m, corners of radius 7.0 to 8.5 m; here the
//	              wide rink of 30 m with corners of 8.5 m
//	2014-18, 17   goal line 4.0 m from the end boards, 5 cm wide; blue lines
//	              22.86 m from the end boards (a federation's note: to the
//	              line's middle), 30 cm wide
//	2022/23, 1.9  end-zone circles of radius 4.5 m; spots 6 m from the goal
//	              line, 7 m off the axis (from an open geometry data set)
//	         2.1  goal 1.83 m x 1.22 m, crease of radius 1.83 m
//
// From memory: neutral spots 1.5 m from the blue line, goal 1.12 m deep. Some
// open geometry data use a neutral zone of 15 m instead; this one does not.
func international() Dimensions {
	const m, cm = unit.Metre, unit.Centimetre
	return Dimensions{
		Length: 60 * m, Width: 30 * m, CornerRadius: 8.5 * m,
		Markings: Markings{
			GoalLine: 4 * m, BlueLine: 22.86 * m, BlueLineTo: LineMiddle,
			CircleRadius: 4.5 * m, SpotFromGoal: 6 * m, SpotFromAxis: 7 * m, NeutralSpot: 1.5 * m,
			GoalWidth: 1.83 * m, GoalHeight: 1.22 * m, GoalDepth: 1.12 * m,
			CreaseRadius: 1.83 * m,
			LineWidth:    5 * cm, BlueWidth: 30 * cm,
		},
	}
}
