// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

/**
 * Jobs on a whole project, for whoever offers them, with a window or without: open its folder, carry out its plan on a bench or from
 * recordings, assemble and publish its results sheet, make the demo project anew.
 *
 * <pre>{@code
 * ProjectFolder folder = ProjectFolder.open(Path.of("kestrel.ohmstead"));
 * new ReplayJob(folder, version).run(Path.of("recordings"), false, JobProgress.SILENT);
 * ResultsSheet sheet = SheetAssembly.assemble(folder, version, clock.instant());
 * PublishedSheet published = SheetPublisher.publish(sheet, folder.sheetsFolder());
 * }</pre>
 */
package org.ohmstead.jobs;
