package api

import (
	"context"
	"fmt"
	"sync/atomic"

	lru "github.com/hashicorp/golang-lru/v2"

	"counterpour/api/service"
	"counterpour/api/shape"
	"counterpour/api/wire"
)

// Limits of the cache of scores. Pages and phones ask for the same few drafts again and
// again; very long bodies are not cached.
const (
	mostScored       = 512
	mostScoredLength = 4096 // bytes of a body
)

// scoredBodies is a cache of encoded answers to drafts. It is valid for one snapshot of
// the house and emptied when the house changes. It is safe for concurrent use.
type scoredBodies struct{ now atomic.Pointer[scoredOf] }

// scoredOf is the cache for one snapshot. Its keys are encoded request bodies.
type scoredOf struct {
	house *service.Snapshot
	kept  *lru.Cache[string, []byte]
}

// of returns the cache for a snapshot. If the cache is for another snapshot, of replaces
// it with an empty one.
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

// answer returns the JSON answer to a draft, from the cache if the same body was answered
// for this snapshot before. Errors are not cached.
func (s *scoredBodies) answer(ctx context.Context, house *service.Snapshot, body shape.ScoreBody) ([]byte, error) {
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
	out, err := shape.AnswerScore(ctx, house, body)
	if err != nil {
		return nil, err
	}
	text, err := wire.Encode(out)
	if err == nil && len(key) <= mostScoredLength {
		known.kept.Add(string(key), text)
	}
	return text, err
}
