package part

import (
	"net/url"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/webui/form"
)

func TestPager(t *testing.T) {
	list := []int{1, 2, 3, 4, 5, 6, 7}
	fields := url.Values{"q": {"gin"}, PageField: {"9"}}
	for _, c := range []struct {
		name string
		list []int
		page int
		want Pager
		on   []int
	}{
		{"the first", list, 1, Pager{1, 3, 7, "", "/specs?page=2&q=gin"}, []int{1, 2, 3}},
		{"between", list, 2, Pager{4, 6, 7, "/specs?q=gin", "/specs?page=3&q=gin"}, []int{4, 5, 6}},
		{"the last", list, 3, Pager{7, 7, 7, "/specs?page=2&q=gin", ""}, []int{7}},
		{"beyond the end", list, 9, Pager{7, 7, 7, "/specs?page=2&q=gin", ""}, []int{7}},
		{"all on one", list[:3], 1, Pager{1, 3, 3, "", ""}, []int{1, 2, 3}},
		{"nothing", nil, 1, Pager{}, []int{}},
	} {
		got := NewPager(len(c.list), 3, c.page, "/specs", fields)
		assert.Equal(t, c.want, got, c.name)
		assert.Equal(t, c.on, append([]int{}, PageOf(got, c.list)...), c.name)
		assert.Equal(t, len(c.list) > 3, got.Paged(), c.name)
	}
	assert.Equal(t, url.Values{"q": {"gin"}, PageField: {"9"}}, fields, "what was sent stays as it is")
}

func TestReadPage(t *testing.T) {
	for written, want := range map[string]int{"": 1, "1": 1, "12": 12} {
		n, err := ReadPage(url.Values{PageField: {written}})
		require.NoError(t, err)
		assert.Equal(t, want, n)
	}
	for _, written := range []string{"0", "-1", "x", "1.5", "99999999999999999999"} {
		_, err := ReadPage(url.Values{PageField: {written}})
		assert.ErrorIs(t, err, form.ErrUnreadable, written)
	}
}
