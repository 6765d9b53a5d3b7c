#include <algorithm>

#include "core/history/evaluation.h"
#include "core/history/intake_reference.h"
#include "core/intake/capture_text.h"
#include "core/intake/column_map.h"
#include "core/intake/height_grid.h"
#include "core/intake/sound_file.h"
#include "core/measure/text.h"

namespace fettle {
namespace {

std::string named(const Json& reference, const std::string& sentence) {
  return reference.value("file", "") + ": " + sentence;
}

std::string noColumnFits(const Field& field) {
  std::string keys;
  for (const auto& column : field.columns) {
    keys += keys.empty() ? "" : ", ";
    keys += column.key;
  }
  return say(
      Text::tr("no header fits a column of the table {0}; the columns are {1}, and others can be named "
               "under \"columns\"."),
      field.label, keys);
}

std::string noSoundWanted(const Field& field) {
  return say(Text::tr("this is a sound file; {0} needs a text table of its columns."), field.label);
}

/// The choice meant by a word of a file: "X" for "x", "Outside" for "outside".
std::string choiceMeant(const Field& field, const std::string& word) {
  const auto meant = std::find_if(field.choices.begin(), field.choices.end(), [&](const Choice& choice) {
    return isSameWord(choice.key, word) || isSameWord(choice.label, word);
  });
  return meant == field.choices.end() ? word : meant->key;
}

/// The reason a word of a file excludes its row for; blank when the word says that it does not.
Json exclusion(const std::string& word) {
  const bool included = word.empty() || word == "0" || yesNoFromWord(word) == false;
  return included ? Json() : Json(word);
}

/// `field` is none for the column that excludes rows.
Json cell(const KeyedColumns::Column& column, std::size_t row, const Field* field) {
  if (!field) {
    return exclusion(column.words[row]);
  }
  if (field->kind != FieldKind::number) {
    const std::string& word = column.words[row];
    return word.empty() ? Json() : Json(choiceMeant(*field, word));
  }
  const bool blank =
      std::find(column.blankRows.begin(), column.blankRows.end(), row) != column.blankRows.end();
  return blank ? Json() : Json(column.values[row]);
}

}  // namespace

IntakeFiles::IntakeFiles(FileBytes bytes) : m_bytes(std::move(bytes)) {}

void IntakeFiles::setProgress(std::function<bool(double)> progress) {
  m_progress = std::move(progress);
}

tl::expected<std::string, std::string> IntakeFiles::bytesOf(const Json& reference) const {
  if (auto problem = referenceProblem(reference)) {
    return tl::unexpected(std::move(*problem));
  }
  return m_bytes(reference);
}

tl::expected<CapturePointer, std::string> IntakeFiles::capture(const Json& reference, const Field& field) {
  const std::string key = reference.contains("sha256") ? field.key + reference.dump() : std::string();
  const auto kept = std::find_if(m_captures.begin(), m_captures.end(),
                                 [&](const auto& entry) { return !key.empty() && entry.first == key; });
  if (kept != m_captures.end()) {
    return kept->second;
  }
  const auto bytes = bytesOf(reference);
  if (!bytes) {
    return tl::unexpected(bytes.error());
  }
  if (isSoundFile(*bytes) && !findField(field.columns, "level")) {
    return tl::unexpected(named(reference, noSoundWanted(field)));
  }
  auto capture = isSoundFile(*bytes) ? readSoundFile(*bytes)
                                     : readCapture(*bytes, wantedColumns(field), columnChoice(reference),
                                                   {}, formatHints(reference), m_progress);
  if (!capture) {
    if (capture.error().cancelled) {
      throw Cancelled{};
    }
    return tl::unexpected(named(reference, capture.error().sentence));
  }
  capture->name = reference.value("file", "");
  capture->sha256 = reference.contains("sha256") ? reference["sha256"].get<std::string>() : sha256(*bytes);
  auto read = std::make_shared<const Capture>(std::move(*capture));
  if (!key.empty()) {
    constexpr std::size_t mostKept = 12;
    if (m_captures.size() == mostKept) {
      m_captures.erase(m_captures.begin());
    }
    m_captures.emplace_back(key, read);
  }
  return read;
}

tl::expected<Json, std::string> IntakeFiles::table(const Json& reference, const Field& field) {
  const auto bytes = bytesOf(reference);
  if (!bytes) {
    return tl::unexpected(bytes.error());
  }
  ReadOptions options;
  options.blanksAllowed = true;  // a blank cell is for the step to miss, by row and column
  const auto read =
      readColumns(*bytes, wantedColumns(field), columnChoice(reference), formatHints(reference), options);
  if (!read) {
    return tl::unexpected(named(reference, read.error().sentence));
  }
  if (read->columns.empty()) {
    return tl::unexpected(named(reference, noColumnFits(field)));
  }
  Json rows = Json::array();
  for (const auto& column : read->columns) {
    const Field* described = findField(field.columns, column.key);
    const std::size_t count = std::max(column.words.size(), column.values.size());
    for (std::size_t row = 0; row < count; ++row) {
      if (rows.size() <= row) {
        rows.push_back(reference.value("constants", Json::object()));
      }
      rows[row][column.key] = cell(column, row, described);
    }
  }
  return rows;
}

tl::expected<Json, std::string> IntakeFiles::grid(const Json& reference, const Field&) {
  const auto bytes = bytesOf(reference);
  if (!bytes) {
    return tl::unexpected(bytes.error());
  }
  const auto grid = readGrid(*bytes, gridOptions(reference));
  if (!grid) {
    return tl::unexpected(named(reference, grid.error().sentence));
  }
  return Json{{"x", grid->x}, {"y", grid->y}, {"z", grid->z}};
}

}  // namespace fettle
