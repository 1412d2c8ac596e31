#pragma once
/// A colour as a screen shows it, and how light it is: what a legend needs.

#include "colour/contrast.hpp"
#include "colour/srgb.hpp"
