#include "core/maths/time_frequency.h"

#include <algorithm>

namespace fettle::maths {
namespace {

/// Segments [first, last) of the list of starts that share a column.
struct Column {
  std::size_t first = 0;
  std::size_t last = 0;
};

/// Groups of at most `perColumn` neighbours, none across two stretches.
std::vector<Column> columnsOf(std::span<const std::size_t> starts, std::span<const IndexRange> stretches,
                              std::size_t perColumn) {
  std::vector<Column> columns;
  std::size_t next = 0;
  for (const IndexRange& stretch : stretches) {
    std::size_t inColumn = perColumn;
    for (; next < starts.size() && starts[next] >= stretch.begin && starts[next] < stretch.end; ++next) {
      if (inColumn == perColumn) {
        columns.push_back({next, next});
        inColumn = 0;
      }
      columns.back().last = next + 1;
      ++inColumn;
    }
  }
  return columns;
}

}  // namespace

Expected<TimeFrequencyPicture> timeFrequencyPicture(std::span<const double> time,
                                                    std::span<const double> samples,
                                                    std::span<const IndexRange> stretches,
                                                    const SegmentSettings& settings,
                                                    const PictureLimits& limits, const Progress& progress) {
  if (time.size() != samples.size()) {
    return failure("there must be as many times as samples");
  }
  const auto starts = segmentStarts(samples.size(), stretches, settings);
  if (!starts) {
    return failure(starts.error());
  }
  if (starts->empty()) {
    return failure("no stretch without a gap is as long as one segment");
  }
  const std::size_t wanted = std::max<std::size_t>(limits.columns, 1);
  const auto columns = columnsOf(*starts, stretches, (starts->size() + wanted - 1) / wanted);

  TimeFrequencyPicture picture;
  picture.frequency = segmentFrequencies(settings);
  std::vector<double> density(picture.frequency.size());
  std::erase_if(picture.frequency, [&](double frequency) { return frequency > limits.highestFrequency; });
  const auto rows = static_cast<Eigen::Index>(picture.frequency.size());
  picture.density.resize(rows, static_cast<Eigen::Index>(columns.size()));

  SegmentDensity segment(settings);
  for (std::size_t c = 0; c < columns.size(); ++c) {
    if (progress && !progress(static_cast<double>(c) / static_cast<double>(columns.size()))) {
      return failure(cancelled);
    }
    std::fill(density.begin(), density.end(), 0.0);
    for (std::size_t i = columns[c].first; i < columns[c].last; ++i) {
      segment.addTo(samples.subspan((*starts)[i], settings.length), density);
    }
    const auto count = static_cast<double>(columns[c].last - columns[c].first);
    picture.density.col(static_cast<Eigen::Index>(c)) =
        Eigen::Map<const Eigen::VectorXd>(density.data(), rows) / count;
    const std::size_t lastSample = (*starts)[columns[c].last - 1] + settings.length - 1;
    picture.time.push_back(0.5 * (time[(*starts)[columns[c].first]] + time[lastSample]));
  }
  if (!picture.density.allFinite()) {
    return failure("the samples hold a value that is no number");
  }
  return picture;
}

}  // namespace fettle::maths
