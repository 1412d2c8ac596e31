# Runs over the package's tree before it is packed: refuses one without the studio's page, and adds what a Debian package has to have
# (copyright and changelog, Debian policy 12.5 and 12.7).

file(GLOB_RECURSE page LIST_DIRECTORIES FALSE "${CPACK_TEMPORARY_INSTALL_DIRECTORY}/*/share/evencount/studio/index.html")
if(NOT page)
  message(FATAL_ERROR "The studio's page is not in the package: build it first (tools/page), or let tools/package do everything.")
endif()
list(GET page 0 page)
get_filename_component(share "${page}/../../.." ABSOLUTE)
set(documents "${share}/doc/evencount")

file(READ "${documents}/LICENSE" licence)
string(REGEX MATCH "Copyright[^\n]*" holders "${licence}")
string(REGEX REPLACE "^Copyright \\(c\\) " "" holders "${holders}")
string(REGEX REPLACE "^[^\n]*\n+Copyright[^\n]*\n+" "" licence "${licence}")
string(REGEX REPLACE "\n\n" "\n.\n" licence "${licence}")
string(STRIP "${licence}" licence)
string(REPLACE "\n" "\n " licence "${licence}")
file(WRITE "${documents}/copyright"
"Format: https://www.debian.org/doc/packaging-manuals/copyright-format/1.0/
Upstream-Name: evencount

Files: *
Copyright: ${holders}
License: Expat
 ${licence}
Comment:
 Libraries that are compiled in, and what the studio's page bundles, have
 their own licences: the folder licences beside this file holds them.
")
file(REMOVE "${documents}/LICENSE")  # said by copyright

# What is compiled or bundled in stays under its own licence, which asks to be passed on.
set(modules "${CMAKE_CURRENT_LIST_DIR}/../studio/node_modules")
foreach(part svelte/LICENSE.md three/LICENSE @fontsource/eb-garamond/LICENSE @fontsource/lato/LICENSE)
  get_filename_component(name "${part}" DIRECTORY)
  string(REPLACE "@fontsource/" "font-" name "${name}")
  configure_file("${modules}/${part}" "${documents}/licences/${name}" COPYONLY)
endforeach()
foreach(part libcli11-dev nlohmann-json3-dev libsqlitecpp-dev libboost1.81-dev)
  configure_file("/usr/share/doc/${part}/copyright" "${documents}/licences/${part}" COPYONLY)
endforeach()

# SOURCE_DATE_EPOCH, which tools/package sets to the time of the last commit, dates it.
string(TIMESTAMP date "%a, %d %b %Y %H:%M:%S +0000" UTC)
file(WRITE "${documents}/changelog.Debian"
"evencount (${CPACK_PACKAGE_VERSION}-${CPACK_DEBIAN_PACKAGE_RELEASE}) bookworm; urgency=medium

  * Built from its source folder.

 -- ${CPACK_PACKAGE_CONTACT}  ${date}
")
execute_process(COMMAND gzip -9n "${documents}/changelog.Debian" COMMAND_ERROR_IS_FATAL ANY)
execute_process(COMMAND chmod -R u=rwX,go=rX "${share}/.." COMMAND_ERROR_IS_FATAL ANY)
