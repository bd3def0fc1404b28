// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

/**
 * The shared log of a laboratory: a PostgreSQL database to which several benches hand over the entries of their own logs, each bench its
 * own chain. A bench always works with its own log first, so it needs no server to measure; {@link org.ohmstead.testlog.shared.HandOver}
 * sends what the server does not have yet, as often as one likes, and neither a cut network nor a killed server loses or doubles an
 * entry. Who may read, hand over or close chains is decided by the database's own privileges.
 *
 * <pre>{@code
 * LabAddress address = LabAddress.of(project.sharedLog().orElseThrow(), folder);
 * try (TestLog log = TestLog.openReadOnly(folder.resolve(TestLog.FILE_NAME));
 *         SharedLab lab = SharedLab.connect(address, LabCredentials.find(address))) {
 *     HandOverReport report = new HandOver(lab, origin).run(log.rows());
 *     show(report.sentence());
 * }
 * }</pre>
 */
package org.ohmstead.testlog.shared;
