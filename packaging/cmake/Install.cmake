# Where things go, and packages of them.
include(GNUInstallDirs)

if(TARGET sumpwright)
  install(TARGETS sumpwright RUNTIME DESTINATION "${CMAKE_INSTALL_BINDIR}")
endif()
