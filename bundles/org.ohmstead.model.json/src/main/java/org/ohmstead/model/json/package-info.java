// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

/**
 * Projects, recordings and readings as JSON: the only place of the core that knows their file format. Reading says for each fault the
 * file, the line, the JSON path, what is wrong and what would be right; unknown fields are reported and survive a later write; writing
 * replaces the file in one step or not at all.
 *
 * <pre>{@code
 * Path folder = Path.of("kestrel.ohmstead");
 * try (ProjectLock lock = ProjectLock.acquire(folder)) {
 *     LoadedProject loaded = ProjectFile.read(folder);
 *     loaded.problems().forEach(problem -> show(problem));
 *     Project changed = loaded.project().withSheet(newSheet);
 *     LoadedProject saved = ProjectFile.write(folder, changed, Optional.of(loaded.document()));
 *     remember(saved.revisionSha256());
 * }
 * }</pre>
 */
package org.ohmstead.model.json;
