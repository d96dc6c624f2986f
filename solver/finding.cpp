#include "finding.hpp"

namespace rakewright {

bool refuses(Trouble trouble) { return trouble < Trouble::gap_at_post_too_wide; }

}  // namespace rakewright
