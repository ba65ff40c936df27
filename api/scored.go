package api

import (
	"context"
	"fmt"
	"sync/atomic"

	lru "github.com/hashicorp/golang-lru/v2"

	"counterpour/api/service"
	"counterpour/api/wire"
)

// What is kept of drafts that were scored: a page and a guest's phone ask for the same
// few over and over. The longest bodies are not worth their room.
const (
	mostScored       = 512
	mostScoredLength = 4096 // bytes of a body
)

// scoredBodies keeps the answers to drafts, as they are sent, for as long as the house
// stands as it did. It is safe for concurrent use.
type scoredBodies struct{ now atomic.Pointer[scoredOf] }

// scoredOf is what is kept of one state of the house, by what was asked.
type scoredOf struct {
	house *service.Snapshot
	kept  *lru.Cache[string, []byte]
}

// of returns what is kept of a house as it stands, and drops what was of another.
func (s *scoredBodies) of(house *service.Snapshot) (*scoredOf, error) {
	if now := s.now.Load(); now != nil && now.house == house {
		return now, nil
	}
	kept, err := lru.New[string, []byte](mostScored)
	if err != nil {
		return nil, fmt.Errorf("api: room for scored drafts: %w", err)
	}
	fresh := &scoredOf{house, kept}
	s.now.Store(fresh)
	return fresh, nil
}

// answer returns the answer to a draft in JSON: the one that was given before if the
// same was asked of the house as it stands. A fault is worked out each time.
func (s *scoredBodies) answer(ctx context.Context, house *service.Snapshot, body ScoreBody) ([]byte, error) {
	known, err := s.of(house)
	if err != nil {
		return nil, err
	}
	key, err := wire.Encode(body)
	if err != nil {
		return nil, err
	}
	if text, ok := known.kept.Get(string(key)); ok {
		return text, nil
	}
	out, err := AnswerScore(ctx, house, body)
	if err != nil {
		return nil, err
	}
	text, err := wire.Encode(out)
	if err == nil && len(key) <= mostScoredLength {
		known.kept.Add(string(key), text)
	}
	return text, err
}
