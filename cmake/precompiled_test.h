#pragma once
// As precompiled_core.h, for the tests of core; made once and used by all their programs.
#include <QtTest/QtTest>

#include "cmake/precompiled_core.h"
