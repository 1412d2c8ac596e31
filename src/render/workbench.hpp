#pragma once
/// What a scene is put together on: solids and surfaces that are already there are used again.

#include <functional>
#include <map>
#include <string>
#include <utility>

#include "fabric/fabric.hpp"
#include "project/project.hpp"
#include "render/piece.hpp"

namespace evencount::render {

/// A few materials that no legend has. Colours from memory of the things.
enum class Stuff { thread, cord, silver, form_glass, glass_bead, stone, skin };

class Workbench {
 public:
  Workbench(const project::Project& project, const SceneChoice& choice)
      : project_(project), choice_(choice) {}

  /// A settled band with its thread, and its form or stone where it has one, moved by `placement`, which must not stretch.
  /// The choice's stone is set in the only band shown, where it is worked round, and else in bezels alone; never where there is a form.
  /// Errors: out_of_range (more than most_solids), those of plan_of, set_stone, settle and form_mesh.
  Result<Done> add_band(const project::Band& band, const Placement& placement, int forms_together = 1);
  /// A form alone, its length along z.
  Result<Done> add_form(const project::FormEntry* entry, const form::Form& form, const Placement& placement);

  void add_bead(const bead::Size& size, std::uint32_t surface, const Placement& placement);
  void add_solid(const std::string& key, const std::function<Mesh()>& make, std::uint32_t surface,
                 const Placement& placement);
  void add_strand(std::vector<Vec3> points, double radius_mm, std::uint32_t surface);

  [[nodiscard]] std::uint32_t surface_of_legend(std::size_t entry);
  [[nodiscard]] std::uint32_t surface_of_stuff(Stuff stuff);
  /// The legend's entry that is named at the end of `name`, as in "8/0 round bead, night blue".
  [[nodiscard]] std::optional<std::size_t> entry_named_in(std::string_view name) const;
  /// As `surface_of_legend`, for a bead of another size.
  [[nodiscard]] std::uint32_t surface_for(std::size_t entry, const bead::Size& size);

  /// Everything turned about the vertical, and let down until it rests on height 0.
  void turn_and_rest(double turn);
  /// Balls round everything that must be in the picture.
  [[nodiscard]] const std::vector<Ball>& balls() const { return balls_; }
  void add_ball(Ball ball) { balls_.push_back(ball); }

  Scene scene;

 private:
  /// What the band goes round besides a form: its stone, or nothing.
  [[nodiscard]] Result<fabric::Around> around_stone(const project::Band& band,
                                                    const std::vector<bead::Size>& sizes) const;
  [[nodiscard]] std::vector<bead::Size> sizes_for(const project::Band& band) const;
  void add_skin(const form::Form& form, const fabric::Fabric& fabric, const Placement& placement);
  void add_stone(const form::Stone& stone, const Placement& placement);
  void add_settled(const fabric::Fabric& fabric, const std::vector<bead::Size>& sizes,
                   const Placement& placement);
  void add_links(const fabric::Fabric& fabric, const Placement& placement, std::uint32_t surface);
  std::uint32_t next_number() { return hashed(choice_.seed, count_++); }
  std::uint32_t keep(Surface surface);
  std::uint32_t mesh_of(const std::string& key, const std::function<Mesh()>& make);
  [[nodiscard]] Spectrum thread_colour(const fabric::Fabric& fabric) const;
  [[nodiscard]] Surface form_glass(const project::FormEntry* entry) const;

  const project::Project& project_;
  const SceneChoice& choice_;
  std::map<std::string, std::uint32_t> meshes_;
  std::map<std::pair<std::size_t, std::string>, std::uint32_t> legend_surfaces_;
  std::map<Stuff, std::uint32_t> stuff_;
  std::map<std::string, std::uint32_t> form_surfaces_;
  std::vector<Ball> balls_;
  std::uint32_t count_ = 0;
};

/// Points of a smooth way through the given ones (Catmull and Rom's), `steps` pieces between two.
[[nodiscard]] std::vector<Vec3> smooth_way(const std::vector<Vec3>& through, int steps);

}  // namespace evencount::render
