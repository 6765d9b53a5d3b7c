#pragma once

namespace fettle::ui {

/// Step texts, icon and translations live in a static library: they must be asked for once, at the start.
void takeInResources();

}  // namespace fettle::ui
