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
install(FILES schema/project.schema.json DESTINATION ${CMAKE_INSTALL_DATADIR}/evencount/schema)
install(DIRECTORY examples/ DESTINATION ${CMAKE_INSTALL_DATADIR}/evencount/examples)
install(DIRECTORY studio/dist/ DESTINATION ${CMAKE_INSTALL_DATADIR}/evencount/studio OPTIONAL)  # where it has been built
