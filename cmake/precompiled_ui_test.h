#pragma once
// As precompiled_test.h, for the tests of widgets.
#include <QtTest/QtTest>
#include <QtWidgets/QtWidgets>

#include "cmake/precompiled_core.h"
