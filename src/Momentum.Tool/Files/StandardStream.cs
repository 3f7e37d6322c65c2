using Momentum.Tool.Commands;

namespace Momentum.Tool.Files;

/// <summary>
/// Standard output or standard error. A result that cannot be written there is told in one line; a message that cannot has
/// nowhere else to go and is dropped. After the first failure nothing more is tried.
/// </summary>
internal sealed class StandardStream(Stream stream, bool carriesResults) : Stream
{
    private bool _hasFailed;

    public override bool CanRead => false;

    public override bool CanSeek => false;

    public override bool CanWrite => true;

    public override long Length => throw new NotSupportedException();

    public override long Position
    {
        get => throw new NotSupportedException();
        set => throw new NotSupportedException();
    }

    public override void Write(byte[] buffer, int offset, int count) => Write(buffer.AsSpan(offset, count));

    public override void Write(ReadOnlySpan<byte> buffer)
    {
        if (_hasFailed)
        {
            return;
        }

        try
        {
            stream.Write(buffer);
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            // A closed descriptor is reported as a forbidden one.
            _hasFailed = true;
            if (carriesResults)
            {
                string reason = failure is UnauthorizedAccessException ? "it is closed" : failure.Message.TrimEnd('.');
                throw new UsageException($"the result could not be written to standard output: {reason}", "Name a file with --output, or mend the redirection.");
            }
        }
    }

    public override void Flush()
    {
    }

    public override int Read(byte[] buffer, int offset, int count) => throw new NotSupportedException();

    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    public override void SetLength(long value) => throw new NotSupportedException();
}
