#include "ui/report/page_flow.h"

namespace fettle::ui {
namespace {

class Flow {
 public:
  Flow(const std::vector<Strip>& strips, double pageHeight) : m_strips(strips), m_height(pageHeight) {}

  std::vector<PlacedStrip> run() {
    for (std::size_t first = 0; first < m_strips.size();) {
      std::size_t end = first + 1;
      while (end < m_strips.size() && m_strips[end - 1].withNext) {
        ++end;
      }
      placeTogether(first, end);
      first = end;
    }
    return std::move(m_placed);
  }

 private:
  void placeTogether(std::size_t first, std::size_t end) {
    double needed = 0;
    for (std::size_t i = first; i < end; ++i) {
      needed += m_strips[i].before + m_strips[i].height;
    }
    if (m_y > 0 && (m_strips[first].newPage || m_y + needed > m_height)) {
      beginPage(first);
    }
    for (std::size_t i = first; i < end; ++i) {
      if (m_y > 0 && m_y + m_strips[i].before + m_strips[i].height > m_height) {
        beginPage(i);
      }
      place(i);
    }
  }

  void beginPage(std::size_t with) {
    ++m_page;
    m_y = 0;
    for (std::size_t i = 0; i < m_strips[with].heads; ++i) {
      place(m_strips[with].headAt + i);
    }
  }

  void place(std::size_t index) {
    const Strip& strip = m_strips[index];
    m_y += m_y > 0 ? strip.before : 0;
    m_placed.push_back({index, m_page, m_y});
    m_y += strip.height;
  }

  const std::vector<Strip>& m_strips;
  double m_height;
  double m_y = 0;
  int m_page = 0;
  std::vector<PlacedStrip> m_placed;
};

}  // namespace

std::vector<PlacedStrip> placedOnPages(const std::vector<Strip>& strips, double pageHeight) {
  return Flow(strips, pageHeight).run();
}

}  // namespace fettle::ui
