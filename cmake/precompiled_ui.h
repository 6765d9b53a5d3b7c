#pragma once
// As precompiled_core.h, for widgets.
#include <QtWidgets/QtWidgets>
#include <algorithm>
#include <functional>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <utility>
#include <vector>
