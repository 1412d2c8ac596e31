# The folder of the project, also when a room is built from elsewhere.
get_filename_component(EVENCOUNT_SOURCE_ROOT ${CMAKE_CURRENT_LIST_DIR} DIRECTORY)

# A room is one folder under src/ and one static library that links only the rooms it names.
#
#   evencount_room(form MAY_USE bead SOURCES closure.cpp ... [APART fit.cpp ...] [PRIVATE_LIBRARIES ...])
#
# APART are sources that are always compiled by themselves: their private names are those of others.
# MAY_USE is both the link line and the list that tools/check_rooms compares with the includes.

find_package(fmt REQUIRED)  # every room formats its messages with it

add_library(evencount_flags INTERFACE)
target_compile_features(evencount_flags INTERFACE cxx_std_20)
target_compile_options(evencount_flags INTERFACE
  $<BUILD_INTERFACE:-Wall;-Wextra;-Wpedantic;-Wshadow;-Wconversion;-Wno-sign-conversion;-Wnon-virtual-dtor;-Wold-style-cast>
  # Designated initialisers leave the rest at its default on purpose; g++ 12 sees ghosts in std::optional
  # and, when optimising, in std::string.
  $<BUILD_INTERFACE:-Wno-missing-field-initializers;$<$<CXX_COMPILER_ID:GNU>:-Wno-maybe-uninitialized;-Wno-restrict>>
  # The same input gives the same bytes on every compiler: no fused multiply-adds behind our back.
  $<BUILD_INTERFACE:-ffp-contract=off>)
# Undefined behaviour is looked for in the rooms alone: in the tests' own code it would take a third of the time to compile them.
string(REGEX REPLACE "(^|,)undefined" "" EVENCOUNT_SANITIZE_ROUND_ROOMS "${EVENCOUNT_SANITIZE}")
if(EVENCOUNT_SANITIZE_ROUND_ROOMS)
  target_compile_options(evencount_flags INTERFACE
    $<BUILD_INTERFACE:-fsanitize=${EVENCOUNT_SANITIZE_ROUND_ROOMS};-fno-omit-frame-pointer>)
endif()
if(EVENCOUNT_SANITIZE)
  target_link_options(evencount_flags INTERFACE $<BUILD_INTERFACE:-fsanitize=${EVENCOUNT_SANITIZE}>)
endif()
install(TARGETS evencount_flags EXPORT evencountTargets)

# Builds that are made from nothing again and again compile several sources of a room at a time, and what most of them include once. Others
# don't, so that a source is seen to include what it uses.
option(EVENCOUNT_TOGETHER "Compile several sources at a time, and the headers that most of them include once" OFF)
set(EVENCOUNT_COMMON_HEADERS <algorithm> <array> <cmath> <cstdint> <functional> <map> <memory> <numbers> <numeric> <optional> <set> <span>
    <string> <string_view> <utility> <variant> <vector> <fmt/format.h>)
if(EVENCOUNT_TOGETHER)
  # What ccache needs to look through a precompiled header, and more of the ghosts that g++ 12 sees in std::string. Of sources
  # that are compiled together one's private names pass for hidden by another's local ones, and for part of a header.
  target_compile_options(evencount_flags INTERFACE
    $<BUILD_INTERFACE:$<$<CXX_COMPILER_ID:GNU>:-fpch-preprocess;-Wno-array-bounds;-Wno-stringop-overflow;-Wno-stringop-overread>>
    "$<BUILD_INTERFACE:-Wno-shadow;$<$<CXX_COMPILER_ID:GNU>:-Wno-subobject-linkage>>"
    "$<BUILD_INTERFACE:$<$<CXX_COMPILER_ID:Clang>:SHELL:-Xclang -fno-pch-timestamp>>")
endif()

# Compiles a target's sources together, those `apart` by themselves.
function(evencount_compile_together target apart)
  if(EVENCOUNT_TOGETHER)
    set_target_properties(${target} PROPERTIES UNITY_BUILD ON UNITY_BUILD_BATCH_SIZE 8)
    set_source_files_properties(${apart} PROPERTIES SKIP_UNITY_BUILD_INCLUSION ON)
  endif()
endfunction()

function(evencount_room name)
  cmake_parse_arguments(ROOM "" "" "MAY_USE;SOURCES;APART;PRIVATE_LIBRARIES" ${ARGN})
  add_library(evencount_${name} STATIC ${ROOM_SOURCES} ${ROOM_APART})
  evencount_compile_together(evencount_${name} "${ROOM_APART}")
  add_library(evencount::${name} ALIAS evencount_${name})
  set_target_properties(evencount_${name} PROPERTIES EXPORT_NAME ${name})
  target_include_directories(evencount_${name} PUBLIC
    $<BUILD_INTERFACE:${EVENCOUNT_SOURCE_ROOT}/src>
    $<INSTALL_INTERFACE:${CMAKE_INSTALL_INCLUDEDIR}/evencount>)
  list(TRANSFORM ROOM_MAY_USE PREPEND evencount_ OUTPUT_VARIABLE rooms)
  target_link_libraries(evencount_${name} PUBLIC evencount_flags ${rooms}
                                          PRIVATE ${ROOM_PRIVATE_LIBRARIES})
  # `page` is compiled with -pthread, which pango asks for; `app` adds to the list.
  if(EVENCOUNT_TOGETHER AND name MATCHES "^(base|page)$")
    target_precompile_headers(evencount_${name} PRIVATE ${EVENCOUNT_COMMON_HEADERS})
  elseif(EVENCOUNT_TOGETHER AND NOT name STREQUAL "app")
    target_precompile_headers(evencount_${name} REUSE_FROM evencount_base)
  endif()
  if(NOT name STREQUAL "app")
    separate_arguments(engine_flags UNIX_COMMAND "${EVENCOUNT_ENGINE_FLAGS}")
    target_compile_options(evencount_${name} PRIVATE ${engine_flags})
  endif()
  if(EVENCOUNT_SANITIZE)
    target_compile_options(evencount_${name} PRIVATE -fsanitize=${EVENCOUNT_SANITIZE} -fno-omit-frame-pointer -fno-sanitize-recover=all
      # Address sees these where they do harm; to check each by itself takes a quarter of the time to compile.
      -fno-sanitize=null,object-size,alignment,pointer-overflow)
  endif()
  install(TARGETS evencount_${name} EXPORT evencountTargets
          ARCHIVE DESTINATION ${CMAKE_INSTALL_LIBDIR})
  install(DIRECTORY ${CMAKE_CURRENT_SOURCE_DIR}/
          DESTINATION ${CMAKE_INSTALL_INCLUDEDIR}/evencount/${name}
          FILES_MATCHING PATTERN "*.hpp" PATTERN "*.inc")
endfunction()
