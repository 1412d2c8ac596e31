# What `cmake --install` puts where, in two components: `program` for whoever designs with it, `development` for whoever builds on its rooms
# (everything that names no component).

# An installable library with an exported target: find_package(evencount), then evencount::page and so on.
include(CMakePackageConfigHelpers)

install(EXPORT evencountTargets NAMESPACE evencount::
        DESTINATION ${CMAKE_INSTALL_LIBDIR}/cmake/evencount)
configure_package_config_file(${CMAKE_CURRENT_SOURCE_DIR}/cmake/evencountConfig.cmake.in
  ${CMAKE_CURRENT_BINARY_DIR}/evencountConfig.cmake
  INSTALL_DESTINATION ${CMAKE_INSTALL_LIBDIR}/cmake/evencount)
write_basic_package_version_file(${CMAKE_CURRENT_BINARY_DIR}/evencountConfigVersion.cmake
  COMPATIBILITY SameMinorVersion)
install(FILES ${CMAKE_CURRENT_BINARY_DIR}/evencountConfig.cmake
              ${CMAKE_CURRENT_BINARY_DIR}/evencountConfigVersion.cmake
        DESTINATION ${CMAKE_INSTALL_LIBDIR}/cmake/evencount)

# The manual page and the completions are what the program says of its own command line.
set(self ${CMAKE_CURRENT_BINARY_DIR}/self)
file(MAKE_DIRECTORY ${self}/links)
find_program(GZIP gzip REQUIRED)
add_custom_command(
  OUTPUT ${self}/evencount.1.gz ${self}/evencount ${self}/_evencount ${self}/evencount.fish
  COMMAND evencount describe man > ${self}/evencount.1
  COMMAND ${GZIP} -9nf ${self}/evencount.1
  COMMAND evencount describe bash > ${self}/evencount
  COMMAND evencount describe zsh > ${self}/_evencount
  COMMAND evencount describe fish > ${self}/evencount.fish
  DEPENDS evencount
  COMMENT "Writing the manual page and the completions")
add_custom_target(evencount_self ALL DEPENDS ${self}/evencount.1.gz)
set(EVENCOUNT_ZSH_FOLDER ${CMAKE_INSTALL_DATADIR}/zsh/site-functions CACHE STRING "Where zsh looks for functions")
set(EVENCOUNT_DATA ${CMAKE_INSTALL_DATADIR}/evencount)
macro(evencount_files folder)
  install(FILES ${ARGN} DESTINATION ${folder} COMPONENT program)
endmacro()
evencount_files(${CMAKE_INSTALL_MANDIR}/man1 ${self}/evencount.1.gz)
evencount_files(${CMAKE_INSTALL_DATADIR}/bash-completion/completions ${self}/evencount)
evencount_files(${EVENCOUNT_ZSH_FOLDER} ${self}/_evencount)
evencount_files(${CMAKE_INSTALL_DATADIR}/fish/vendor_completions.d ${self}/evencount.fish)

# The desktop's menu, icon and kind of file.
evencount_files(${CMAKE_INSTALL_DATADIR}/applications desktop/evencount.desktop)
evencount_files(${CMAKE_INSTALL_DATADIR}/icons/hicolor/scalable/apps desktop/evencount.svg)
evencount_files(${CMAKE_INSTALL_DATADIR}/mime/packages desktop/evencount.xml)

# What the program reads: the demos, and the studio's page where it has been built (tools/page).
evencount_files(${EVENCOUNT_DATA}/schema schema/project.schema.json)
install(DIRECTORY examples/ DESTINATION ${EVENCOUNT_DATA}/examples COMPONENT program)
install(DIRECTORY studio/dist/ DESTINATION ${EVENCOUNT_DATA}/studio COMPONENT program OPTIONAL PATTERN ".sources" EXCLUDE)

# The documents lie as in the source folder, so that their links to each other lead somewhere.
evencount_files(${CMAKE_INSTALL_DOCDIR} README.md ARCHITECTURE.md CONTRIBUTING.md LICENSE)
install(DIRECTORY docs DESTINATION ${CMAKE_INSTALL_DOCDIR} COMPONENT program)
file(RELATIVE_PATH data_from_documents "${CMAKE_INSTALL_FULL_DOCDIR}" "${CMAKE_INSTALL_FULL_DATADIR}/evencount")
foreach(folder examples schema)
  file(CREATE_LINK ${data_from_documents}/${folder} ${self}/links/${folder} SYMBOLIC)
  evencount_files(${CMAKE_INSTALL_DOCDIR} ${self}/links/${folder})
endforeach()

include(EvencountPackage)
