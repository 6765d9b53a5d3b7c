#pragma once
#include <SQLiteCpp/Statement.h>

#include <optional>
#include <string>

namespace fettle {

/// Binds the values of a row in order and runs the statement.
class RowWriter {
 public:
  RowWriter(SQLite::Database& database, const std::string& sql) : m_statement(database, sql) {}
  RowWriter& operator<<(std::int64_t value) {
    m_statement.bind(++m_next, value);
    return *this;
  }
  RowWriter& operator<<(double value) {
    m_statement.bind(++m_next, value);
    return *this;
  }
  RowWriter& operator<<(const std::string& value) {
    m_statement.bind(++m_next, value);
    return *this;
  }
  template <typename T>
  RowWriter& operator<<(const std::optional<T>& value) {
    ++m_next;
    value ? m_statement.bind(m_next, *value) : m_statement.bind(m_next);
    return *this;
  }
  void run() {
    m_statement.exec();
    m_statement.reset();
    m_next = 0;
  }

 private:
  SQLite::Statement m_statement;
  int m_next = 0;
};

inline std::optional<double> optionalNumber(SQLite::Statement& row, int column) {
  return row.isColumnNull(column) ? std::nullopt : std::optional(row.getColumn(column).getDouble());
}

inline std::string textAt(SQLite::Statement& row, int column) {
  return row.getColumn(column).getString();
}

}  // namespace fettle
