#pragma once
#include <QByteArray>
#include <QSize>
#include <QString>
#include <optional>

#include "core/steps/contract/chart.h"

namespace fettle::ui {

enum class ChartFormat { csv, svg, png };

/// What a chart is outside of the program: its values, or a picture of its whole range in the print
/// palette.
QByteArray chartAs(ChartFormat format, const Chart& chart, QSize size);

/// Writes a file whole or not at all.
/// @return one sentence when it could not be written
std::optional<QString> writeFile(const QString& path, const QByteArray& content);

/// A name for the file of a chart: "melt-rate.svg" from its title.
QString fileNameOf(const Chart& chart, ChartFormat format);

}  // namespace fettle::ui
