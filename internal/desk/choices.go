package desk

import "sync"

// mostChoices is how many choices are remembered; as many jobs are kept.
const mostChoices = 12

// choices remembers what each job is about.
type choices struct {
	mu    sync.Mutex
	byID  map[string]*choiceJob
	order []string
}

func (c *choices) put(id string, j *choiceJob) {
	c.mu.Lock()
	defer c.mu.Unlock()
	if c.byID == nil {
		c.byID = map[string]*choiceJob{}
	}
	c.byID[id], c.order = j, append(c.order, id)
	if len(c.order) > mostChoices {
		delete(c.byID, c.order[0])
		c.order = c.order[1:]
	}
}

// get returns the choice of a job, if it belongs to the arena.
func (c *choices) get(id, arena string) (*choiceJob, bool) {
	c.mu.Lock()
	defer c.mu.Unlock()
	j, ok := c.byID[id]
	if !ok || j.arena != arena {
		return nil, false
	}
	return j, true
}
