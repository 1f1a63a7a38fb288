package desk

import (
	"testing"

	"github.com/chromedp/chromedp"
)

const choosePath = demoPage + "/choose"

// TestVisitorChoosesHoles fills in the form, watches the search and looks at the
// next best set.
func TestVisitorChoosesHoles(t *testing.T) {
	t.Parallel()
	v := visit(t, 1280, 900, "dark")
	v.open(demoPage)
	v.do(chromedp.Click(`a[href="` + choosePath + `"]`))
	v.waitFor(`!!document.querySelector(".wishes")`)
	v.do(chromedp.Click(`[data-more] summary`))
	v.do(
		chromedp.SetValue(`[name="moments"]`, "400"), chromedp.SetValue(`[name="step"]`, "600 mm"),
		chromedp.SetValue(`[name="count"]`, "4"), chromedp.Click(`[name="prices"]`),
	)
	v.do(chromedp.Click(`[data-wish-map] [data-hole="B1"]`))
	v.waitFor(`document.querySelector('[name="hole-B1"]:checked').value === "keep"`)
	v.do(chromedp.Click(`.wishes button.press`))
	v.waitFor(`!!document.querySelector(".answer, .choosing")`)
	v.waitFor(`!!document.querySelector(".answer")`)
	if !eval[bool](v, `document.querySelector(".answer h2").textContent.includes("proved")`) {
		t.Errorf("the answer says %q", eval[string](v, `document.querySelector(".answer h2").textContent`))
	}
	rows := `Array.from(document.querySelectorAll("table.chosen tbody th"), (e) => e.textContent)`
	best := eval[[]string](v, rows)
	if len(best) != 4 || !eval[bool](v, rows+`.includes("B1")`) {
		t.Errorf("chosen: %v, want four with B1", best)
	}
	v.do(chromedp.Click(`.answer-sets a:nth-child(2)`))
	v.waitFor(`document.querySelector('.answer-sets [aria-current]').textContent.includes("Next best 1")`)
	if next := eval[[]string](v, rows); len(next) != 4 {
		t.Errorf("the next best set: %v", next)
	}
	for _, complaint := range eval[[]string](v, namesScript) {
		t.Error(complaint)
	}
}

// TestVisitorStopsAChoice starts a long search and stops it: the page says how
// far it came, and the search is over.
func TestVisitorStopsAChoice(t *testing.T) {
	t.Parallel()
	v := visit(t, 360, 800, "light")
	v.open(choosePath)
	v.do(chromedp.SetValue(`[name="moments"]`, "50000"), chromedp.SetValue(`[name="step"]`, "100 mm"))
	v.do(chromedp.Click(`.wishes button.press`))
	v.waitFor(`!!document.querySelector(".choosing")`)
	v.waitFor(`Number(document.querySelector("[data-share]").value) > 0`)
	v.do(chromedp.Click(`.choosing button`))
	v.waitFor(`!document.querySelector(".choosing") && !!document.querySelector(".form-problem, .answer")`)
	v.open(choosePath)
	v.checkWidth(choosePath)
}
