#pragma once
#include <string>
#include <string_view>

#include "core/intake/intake_error.h"

namespace fettle {

/// The characters of a file or clipboard as UTF-8 without byte order mark. UTF-8 is looked at in place (the
/// bytes must outlive this object), UTF-16 of either byte order is converted; single bytes that are no
/// UTF-8 stay as they are, only headers need them (see validUtf8).
class PlainText {
 public:
  /// Refuses nothing at all, and binary data: control characters other than blanks and line ends.
  static Intake<PlainText> from(std::string_view bytes);

  std::string_view view() const { return m_isConverted ? std::string_view(m_converted) : m_source; }

 private:
  std::string_view m_source;
  std::string m_converted;
  bool m_isConverted = false;
};

}  // namespace fettle
