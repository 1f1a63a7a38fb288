package recap

import (
	"cmp"
	"context"
	"math"
	"slices"

	"example.org/rinkpane/internal/answer/light"
	"example.org/rinkpane/internal/answer/sight"
	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/glass"
	"example.org/rinkpane/internal/survey/kit"
	"example.org/rinkpane/internal/survey/play"
)

// Outlook is what each hole has of a game: the model's moments as it sees them.
type Outlook struct {
	arena arena.Arena
	kit   kit.Kit
	holes map[string]*prospect
	looks map[lookKey]look
	let   map[letKey][]float64
}

// prospect is one hole's moments.
type prospect struct {
	sees   []float64 // the mean score of each phase's moments, 0 to 1
	scenes []scene
}

// scene is one moment before a hole.
type scene struct {
	weight float64 // how likely somebody photographs it, without unit
	away   float64 // of the subject from the hole, metres
	turn   float64 // of the way to it from straight through the pane, radians
	cross  float64 // the subject's speed across the view, m/s
	zone   string  // the smallest that it is in
}

// What holes see is asked of so many moments.
const (
	lookMoments = 3000
	lookSeed    = 1
)

// Look returns what holes have of the game that an arena plays; names of no hole are
// passed over. Errors: those of sampling and scoring, ctx's.
func Look(ctx context.Context, a arena.Arena, k kit.Kit, holes []string) (*Outlook, error) {
	o := &Outlook{arena: a, kit: k, holes: map[string]*prospect{}, looks: map[lookKey]look{}, let: map[letKey][]float64{}}
	var known []glass.Hole
	for _, id := range holes {
		if h, ok := a.Hole(id); ok {
			known = append(known, h)
		}
	}
	if len(known) == 0 {
		return o, nil
	}
	set, err := play.Sample(ctx, a.Rink, a.Playing(), lookSeed, lookMoments)
	if err != nil {
		return nil, err
	}
	scorer, err := sight.NewScorer(a, k, sight.DefaultJudgement())
	if err != nil {
		return nil, err
	}
	scores, err := scorer.Score(ctx, known, set, nil)
	if err != nil {
		return nil, err
	}
	zones := light.Zones(a.Rink)
	slices.SortStableFunc(zones, func(a, b light.Zone) int { return cmp.Compare(a.Area(), b.Area()) })
	for i, h := range known {
		opening, err := a.OpeningOf(h)
		if err != nil {
			return nil, err
		}
		o.holes[h.ID] = prospectOf(sight.EyeOf(a, opening), set, scores.Row(i), zones)
	}
	return o, nil
}

func prospectOf(e sight.Eye, set *play.Set, scores []float32, zones []light.Zone) *prospect {
	n := len(play.Phases())
	p := &prospect{sees: make([]float64, n)}
	count := make([]float64, n)
	for i, score := range scores {
		phase := set.Phase[i]
		p.sees[phase] += float64(score)
		count[phase]++
		if score > 0 {
			p.scenes = append(p.scenes, sceneOf(e, set.At(i), float64(score), zones))
		}
	}
	for k := range count {
		p.sees[k] /= max(count[k], 1)
	}
	return p
}

// sceneOf is a moment as a hole has it: its subject moves where its face looks, as fast as
// its phase does.
func sceneOf(e sight.Eye, m play.Moment, score float64, zones []light.Zone) scene {
	who := m.People[m.Subject]
	at := geom.Vec2{X: who.X, Y: who.Y}
	way := at.Sub(e.At)
	turned := math.Abs(math.Sin(who.Heading - math.Atan2(way.Y, way.X)))
	s := scene{weight: m.Weight * score, away: way.Len(), turn: math.Abs(math.Atan2(way.Dot(e.Along), way.Dot(e.In))), cross: m.Phase.Speed() * turned}
	for _, z := range zones {
		if z.Contains(at) {
			s.zone = z.ID
			break
		}
	}
	return s
}
