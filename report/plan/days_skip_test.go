package plan

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Skipping sessions in which nothing can change gives what trying each of them does: the
// same days, and the same reasons.
func TestSkippedSessionsChangeNothing(t *testing.T) {
	random := rand.New(rand.NewPCG(5, 12))
	skipped := 0
	for range 300 {
		coats := make([]Coat, 2+random.IntN(12))
		for i := range coats {
			coats[i].ID, coats[i].Region = fmt.Sprint(i), string(rune('A'+random.IntN(4)))
			coats[i].Mixes = []CoatMix{{Pile: fmt.Sprint(random.IntN(5))}, {Pile: fmt.Sprint(random.IntN(5))}}
			for b := range i {
				if random.IntN(3) == 0 {
					r := rest{on: b, days: float64(random.IntN(60)), wet: -1}
					if random.IntN(2) == 0 {
						r.wet = float64(random.IntN(9))
					}
					coats[i].rests = append(coats[i].rests, r)
				}
			}
		}
		work := Work{Sessions: 1 + random.IntN(7), Piles: 1 + random.IntN(4)}
		left := map[int]int{random.IntN(len(coats)): random.IntN(20)}
		quick := greedy(coats, work, left)
		plain := newSchedule(coats, work, left)
		for slot := 0; len(plain.day) < len(coats); slot++ {
			plain.fill(slot)
		}
		require.Equal(t, plain.day, quick.day)
		require.Equal(t, plain.hindered, quick.hindered)
		skipped += plain.asked - quick.asked
	}
	assert.Greater(t, skipped, 1000, "questions saved")
}

// By hand: three sessions a week are on days 1, 3, 5, 8, 10.
func TestSlotFrom(t *testing.T) {
	for day, slot := range map[int]int{1: 0, 2: 1, 3: 1, 4: 2, 5: 2, 6: 3, 7: 3, 8: 3, 9: 4, 365: 156} {
		assert.Equal(t, slot, slotFrom(day, 3), "day %d", day)
	}
}
