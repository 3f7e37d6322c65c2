using System.Runtime.InteropServices;
using System.Runtime.Versioning;

namespace Momentum.Tool.Files;

/// <summary>
/// The calls of Linux that .NET has no name for: which file a name is, giving a file to its former owner, and writing a
/// folder's entries to the disk. The layout is that of <c>struct statx</c> in <c>linux/stat.h</c>, the same on every processor.
/// </summary>
[SupportedOSPlatform("linux")]
internal static partial class Linux
{
    private const int FromWorkingDirectory = -100;
    private const uint BasicStatus = 0x7ff;
    private const int NoSuchFile = 2;
    private const int NoPermission = 13;
    private const int NotADirectory = 20;

    public static FileStatus? StatusOf(string path)
    {
        if (NativeStatus(FromWorkingDirectory, path, 0, BasicStatus, out Status status) != 0)
        {
            int error = Marshal.GetLastPInvokeError();
            string message = Marshal.GetPInvokeErrorMessage(error);
            return error switch
            {
                NoSuchFile or NotADirectory => null,
                NoPermission => throw new UnauthorizedAccessException(message),
                _ => throw new IOException(message),
            };
        }

        FileKind kind = (status.Mode & 0xF000) switch
        {
            0x1000 => FileKind.Pipe,
            0x2000 => FileKind.CharacterDevice,
            0x4000 => FileKind.Directory,
            0x6000 => FileKind.BlockDevice,
            0xC000 => FileKind.Socket,
            _ => FileKind.Plain,
        };
        return new FileStatus(kind, new FileIdentity(((ulong)status.DeviceMajor << 32) | status.DeviceMinor, status.Number, ""), (status.User, status.Group));
    }

    /// <summary>Gives a file to a user and a group; false if that is not allowed.</summary>
    public static bool TryGive(string path, (uint User, uint Group) owner) => NativeChangeOwner(path, owner.User, owner.Group) == 0;

    /// <summary>Has a folder's entries written to the disk, as far as its file system does that.</summary>
    public static void SyncFolder(string path)
    {
        int descriptor = NativeOpen(path, 0);
        if (descriptor >= 0)
        {
            _ = NativeSync(descriptor);
            _ = NativeClose(descriptor);
        }
    }

    [LibraryImport("libc", EntryPoint = "statx", SetLastError = true, StringMarshalling = StringMarshalling.Utf8)]
    private static partial int NativeStatus(int directory, string path, int flags, uint mask, out Status status);

    [LibraryImport("libc", EntryPoint = "chown", SetLastError = true, StringMarshalling = StringMarshalling.Utf8)]
    private static partial int NativeChangeOwner(string path, uint user, uint group);

    [LibraryImport("libc", EntryPoint = "open", SetLastError = true, StringMarshalling = StringMarshalling.Utf8)]
    private static partial int NativeOpen(string path, int flags);

    [LibraryImport("libc", EntryPoint = "fsync", SetLastError = true)]
    private static partial int NativeSync(int descriptor);

    [LibraryImport("libc", EntryPoint = "close", SetLastError = true)]
    private static partial int NativeClose(int descriptor);

    [StructLayout(LayoutKind.Explicit, Size = 256)]
    private struct Status
    {
        [FieldOffset(20)]
        public uint User;

        [FieldOffset(24)]
        public uint Group;

        [FieldOffset(28)]
        public ushort Mode;

        [FieldOffset(32)]
        public ulong Number;

        [FieldOffset(136)]
        public uint DeviceMajor;

        [FieldOffset(140)]
        public uint DeviceMinor;
    }
}
